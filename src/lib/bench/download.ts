/** Gives the user a file through the browser's downloads. */
export function download(contents: BlobPart, type: string, fileName: string): void {
  const address = URL.createObjectURL(new Blob([contents], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser reads the address a little later.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

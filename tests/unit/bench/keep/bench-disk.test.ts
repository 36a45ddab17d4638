import { afterEach, expect, it, vi } from 'vitest';
import { browserDisk, canWriteToFiles, textOfBench } from '../../../../src/lib/bench/keep/bench-disk.js';
import { handleOf } from '../../../helpers/kept-tab.js';

afterEach(() => void vi.unstubAllGlobals());

const closed = async () => {
  throw new DOMException('closed', 'AbortError');
};

it('saves to the file that the user picks, and to the one it has', async () => {
  const [yard, other] = [handleOf('yard.json'), handleOf('other.json')];
  const asked = vi.fn(async () => yard);
  vi.stubGlobal('showSaveFilePicker', asked);
  expect(canWriteToFiles()).toBe(true);
  expect(await browserDisk.save('one', 'bench.json', null)).toEqual({ name: 'yard.json', handle: yard });
  expect(await browserDisk.save('two', 'bench.json', other)).toEqual({ name: 'other.json', handle: other });
  expect([yard.texts, other.texts]).toEqual([['one'], ['two']]);
  expect(asked).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ suggestedName: 'bench.json' }));
});

it('does nothing where the user closes the picker, and tells every other failure', async () => {
  vi.stubGlobal('showSaveFilePicker', closed);
  vi.stubGlobal('showOpenFilePicker', closed);
  expect(await browserDisk.save('one', 'bench.json', null)).toBeNull();
  expect(await browserDisk.pick()).toBeNull();
  vi.stubGlobal('showSaveFilePicker', () => Promise.reject(new Error('no permission')));
  await expect(browserDisk.save('one', 'bench.json', null)).rejects.toThrow('no permission');
});

it('opens what is picked with the way back to it', async () => {
  const yard = handleOf('yard.json');
  yard.texts.push('a bench');
  vi.stubGlobal('showOpenFilePicker', async () => [yard]);
  const picked = (await browserDisk.pick())!;
  expect([await picked.file.text(), picked.handle]).toEqual(['a bench', yard]);
});

it('downloads and asks by an input where a page may not write to files', async () => {
  const link = { href: '', download: '', click: vi.fn() };
  const file = new File(['a bench'], 'yard.json');
  const deeds: string[] = [];
  const input = {
    type: '',
    accept: '',
    hidden: false,
    files: [file],
    onchange: () => {},
    click: () => {
      deeds.push(`asked, hidden: ${input.hidden}`);
      input.onchange();
    },
    remove: () => deeds.push('taken away')
  };
  vi.stubGlobal('document', {
    createElement: (name: string) => (name === 'a' ? link : input),
    body: { append: (what: unknown) => deeds.push(what === input ? 'put into the page' : 'something else') }
  });
  expect(canWriteToFiles()).toBe(false);
  expect(await browserDisk.save('one', 'bench.json', null)).toEqual({ name: 'bench.json', handle: null });
  expect([link.download, link.click.mock.calls.length]).toEqual(['bench.json', 1]);
  expect(await browserDisk.pick()).toEqual({ file, handle: null });
  expect(deeds).toEqual(['put into the page', 'asked, hidden: true', 'taken away']);
});

it('reads no file that is too large to be a bench, and says so where one cannot be read', async () => {
  const read = vi.fn(async () => 'text');
  await expect(textOfBench({ size: 80e6, text: read } as unknown as File)).rejects.toThrow(
    'the file is 80 megabytes large; no bench is, and it was not read'
  );
  expect(read).not.toHaveBeenCalled();
  const gone = { size: 10, text: () => Promise.reject(new Error('NotFound')) } as unknown as File;
  await expect(textOfBench(gone)).rejects.toThrow('the file cannot be read; perhaps it was moved or deleted');
});

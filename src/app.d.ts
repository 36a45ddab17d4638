declare global {
  // The page has no server side and no locals: Kit's interfaces stay as they are.
}

export {};

/** What is written where the back comes hardly late, half a wave late and a whole wave late. */
export interface LateWords {
  hardly: string;
  half: string;
  whole: string;
}

/** For a hall. */
export const SHORT: LateWords = {
  hardly: '← hardly late: cancels',
  half: '½ wave late: adds',
  whole: '1 wave: cancels'
};

/** For reading at a desk. */
export const FULL: LateWords = {
  hardly: '← the back comes hardly late: front and back cancel',
  half: 'half a wave late: the back adds',
  whole: 'a whole wave late: they cancel'
};

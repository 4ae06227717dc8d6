import { spoken } from '../language/spoken.ts';

/** What is said of the list that is taken to the shop. */
export const AT_SHOP_WORDS = spoken('atShop', {
  open: 'At the shop',
  verb: 'go to the list for the shop',
  heading: 'At the shop',
  none: 'Nothing to buy.',
  sheets: (sheets: string, size: string) => (size === '' ? sheets : `${sheets}, ${size}`),
  short: (have: number) => `you have ${have}`,
  shortWet: 'you have less than that',
  left: (n: number, all: number) => (n === 0 ? 'All of it is bought.' : `${n} of ${all} still to buy.`),
  share: 'Share the list',
  copy: 'Copy the list',
  copied: 'Copied: paste it where you need it.',
  byHand: 'Copy it from here:',
  text: 'The list as text',
  title: (job: string) => `${job}: to buy`,
  line: (isBought: boolean, much: string, what: string) => `${isBought ? '☑' : '☐'} ${much}, ${what}`,
});

/** Nothing is fetched where pages are made. */
const nothing = (): Promise<never> => Promise.reject(new Error('screens are fetched by a page in a browser'));

/**
 * The screens that come later (Later.svelte), each with its styles. Of one that was known where the page is made, the styles would
 * come with the first screen.
 */
export const screens = {
  trials: import.meta.env.SSR ? nothing : () => import('../trials/TrialScreen.svelte'),
  air: import.meta.env.SSR ? nothing : () => import('../air/AirPictures.svelte'),
  drive: import.meta.env.SSR ? nothing : () => import('../drive/Drive.svelte'),
  place: import.meta.env.SSR ? nothing : () => import('../place/PlaceHeard.svelte'),
  sound: import.meta.env.SSR ? nothing : () => import('../sound/SoundItself.svelte'),
  hall: import.meta.env.SSR ? nothing : () => import('../hall/Hall.svelte'),
  help: import.meta.env.SSR ? nothing : () => import('../help/Help.svelte'),
  speaker: import.meta.env.SSR ? nothing : () => import('../speaker/SpeakerScreen.svelte'),
  fit: import.meta.env.SSR ? nothing : () => import('../fit/FitScreen.svelte'),
  votes: import.meta.env.SSR ? nothing : () => import('../votes/VoteScreen.svelte'),
  script: import.meta.env.SSR ? nothing : () => import('../script/ScriptScreen.svelte'),
  presenter: import.meta.env.SSR ? nothing : () => import('../script/Presenter.svelte')
};

/** Which of the lab's dialogs are open. */
export class Dialogs {
  /** The question for headphones before the first sound. */
  earCheck = $state(false);
  keyList = $state(false);
  /** How it works, what it leaves out, cautions. */
  help = $state(false);
  /** The speaker, its drawing, a maker's sheet, home measurements. */
  speaker = $state(false);
  /** Which one: what fits into a model, tried and ranked. */
  fit = $state(false);
  /** The hall's script: its scenes. */
  script = $state(false);

  /** The listener has answered the question for headphones. */
  earsChecked = false;
}

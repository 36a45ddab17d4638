import '@fontsource-variable/source-sans-3';
import '../../../src/lib/screens/lab/typefaces.css';
import '../../../src/lib/screens/lab/look.css';
import { mount } from 'svelte';
import SoundHarness from './SoundHarness.svelte';

document.documentElement.classList.add('seen');
mount(SoundHarness, { target: document.getElementById('here') as HTMLElement });

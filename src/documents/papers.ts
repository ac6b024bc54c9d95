/**
 * The parts of the papers that need large libraries: layout, PDF, fonts, PNG. They are bundled apart, so that no other
 * command loads them.
 */
export { placeScene } from './drawing/place-scene.ts';

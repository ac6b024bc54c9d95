import { commands, Location, Position, Range, Uri } from 'vscode';
import type { PlacesShown, TextPosition } from '../server/protocol.ts';

/** Shows places of the text that belong together, in the editor's own list of references. */
export async function showPlaces({ uri, position, places }: PlacesShown): Promise<void> {
  const locations = places.map(
    ({ uri: file, range }) =>
      new Location(Uri.parse(file), new Range(positionOf(range.start), positionOf(range.end))),
  );
  await commands.executeCommand(
    'editor.action.showReferences',
    Uri.parse(uri),
    positionOf(position),
    locations,
  );
}

function positionOf({ line, character }: TextPosition): Position {
  return new Position(line, character);
}

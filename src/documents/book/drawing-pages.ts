/** How large a drawing is printed, and on how many pages, so that its letters can be read. */

export interface Sized {
  readonly width: number;
  readonly height: number;
}

/** Room for a drawing on A4 and on Letter alike, within the margins and below its title, in millimetres. */
interface Room {
  readonly page: 'across' | 'upright';
  readonly width_mm: number;
  readonly height_mm: number;
  readonly perPage: 1 | 2;
}

const rooms: readonly Room[] = [
  { page: 'upright', width_mm: 183, height_mm: 101, perPage: 2 },
  { page: 'across', width_mm: 252, height_mm: 67, perPage: 2 },
  { page: 'across', width_mm: 252, height_mm: 150, perPage: 1 },
  { page: 'upright', width_mm: 183, height_mm: 216, perPage: 1 },
];

/** Millimetres a unit: letters of a drawing are 10 units high and more, and are printed in 4 points and more. */
const READABLE = 0.145;
/** Nothing is printed larger: letters of 9 points. */
const LARGEST = 0.29;
/** What stands on two parts, so that no cable is lost between them, in units. */
const OVERLAP = 80;

/** A drawing, or windows on it in rows, all of one size. */
export interface DrawingPages {
  readonly page: Room['page'];
  readonly columns: number;
  readonly rows: number;
  readonly pages: number;
  readonly mm_per_unit: number;
}

/**
 * As few pages as keep it readable, on these as few cuts as can be, then turned as the page before, and then the
 * largest.
 * @param taken_mm What stands above it on its page already.
 */
export function readablePages(size: Sized, taken_mm = 0, before?: Room['page']): DrawingPages {
  const ranks = ({ page, pages, columns, rows, mm_per_unit }: DrawingPages) => [
    pages,
    columns * rows,
    page === before ? 0 : 1,
    -mm_per_unit,
  ];
  const better = (a: DrawingPages, b: DrawingPages) => {
    const [left, right] = [ranks(a), ranks(b)];
    const at = left.findIndex((rank, i) => rank !== right[i]);
    return at < 0 || left[at]! <= right[at]! ? a : b;
  };
  return rooms.map((room) => pagesIn(room, size, taken_mm)).reduce(better);
}

function pagesIn(room: Room, { width, height }: Sized, taken_mm: number): DrawingPages {
  const height_mm = room.height_mm - taken_mm / room.perPage;
  const columns = windowsFor(width, room.width_mm / READABLE);
  const rows = windowsFor(height, height_mm / READABLE);
  const mm_per_unit = Math.min(
    LARGEST,
    room.width_mm / windowOf(width, columns),
    height_mm / windowOf(height, rows),
  );
  return { page: room.page, columns, rows, pages: (columns * rows) / room.perPage, mm_per_unit };
}

/** All of it at once, however small its letters become. @param perPage So many of its kind share a page. */
export function overviewPages(size: Sized, perPage: Room['perPage'], taken_mm = 0): DrawingPages {
  return rooms
    .filter((room) => room.perPage === perPage)
    .map((room) => ({
      page: room.page,
      columns: 1,
      rows: 1,
      pages: 1 / perPage,
      mm_per_unit: Math.min(
        LARGEST,
        room.width_mm / size.width,
        (room.height_mm - taken_mm / perPage) / size.height,
      ),
    }))
    .reduce((a, b) => (b.mm_per_unit > a.mm_per_unit ? b : a));
}

function windowsFor(length: number, most: number): number {
  return length <= most ? 1 : Math.ceil((length - OVERLAP) / (most - OVERLAP));
}

function windowOf(length: number, count: number): number {
  return (length - OVERLAP) / count + OVERLAP;
}

export interface Window extends Sized {
  readonly left: number;
  readonly top: number;
}

/** Row by row from the left. */
export function windowsOn({ columns, rows }: DrawingPages, { width, height }: Sized): Window[] {
  const [wide, high] = [windowOf(width, columns), windowOf(height, rows)];
  return Array.from({ length: columns * rows }, (_, i) => ({
    left: (i % columns) * (wide - OVERLAP),
    top: Math.floor(i / columns) * (high - OVERLAP),
    width: wide,
    height: high,
  }));
}

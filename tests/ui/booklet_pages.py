# The pages of booklets as a reader of PDF finds them (poppler's pdftotext): no word lies off the page
# or over another, none is smaller than 6 points; and of charts, from where their numbers stand: cells
# are 2.5 mm and more both ways, and every row that is drawn has its number on the side where it
# starts. Over all demo designs, both papers and both units.
# Usage: booklet_pages.py PROGRAM RESOURCES_DIR
import collections, glob, itertools, os, re, shutil, statistics, subprocess, sys, tempfile

program, resources = sys.argv[1:3]
if not shutil.which("pdftotext"):
    print("no pdftotext here")
    sys.exit(1 if os.environ.get("CI") else 77)
MARGIN = 20.0  # points
bad = 0


def wrong(what):
    global bad
    bad += 1
    if bad <= 60:
        print(what)


def words_of(pdf):
    xml = subprocess.run(["pdftotext", "-bbox", pdf, "-"], capture_output=True, text=True).stdout
    for number, page in enumerate(re.split(r"<page ", xml)[1:], 1):
        width, height = map(float, re.match(r'width="([\d.]+)" height="([\d.]+)"', page).groups())
        words = [
            (*map(float, m.groups()[:4]), m.group(5))
            for m in re.finditer(
                r'<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">([^<]*)</word>',
                page,
            )
        ]
        yield number, width, height, words


POINT = 25.4 / 72  # mm


def middle(word, axis):
    return (word[axis] + word[axis + 2]) / 2


def check_chart(at, words):
    """Whether the page is one of a chart."""
    texts = [w[4] for w in words]
    reading = [i for i in range(len(texts) - 3) if texts[i : i + 4] == ["Seen", "from", "the", "right"]]
    if not reading:
        return False
    top = words[reading[0]][3]
    # "rows 125-166 even" are left out.
    even = set()
    for i in range(len(texts) - 2):
        span = re.fullmatch(r"(\d+)-(\d+)", texts[i + 1])
        if texts[i] == "rows" and span and texts[i + 2] == "even":
            even |= set(range(int(span[1]), int(span[2]) + 1))
    # "Rows 1-183, 187 of 188": where it is a part.
    told = set()
    for i in range(len(texts) - 2):
        if texts[i] == "Rows" and re.fullmatch(r"\d+(-\d+)?,?", texts[i + 1]) and "of" in texts[i + 2 : i + 9]:
            for part in itertools.takewhile(lambda t: t != "of", texts[i + 1 :]):
                ends = re.fullmatch(r"(\d+)(?:-(\d+))?,?", part)
                told |= set(range(int(ends[1]), int(ends[2] or ends[1]) + 1))
            break
    numbers = [w for w in words if re.fullmatch(r"\d+", w[4]) and w[1] > top - 2]
    # The rows' numbers stand in two columns: even ones end, odd ones start where the others do.
    odd_start = collections.Counter(round(w[0]) for w in numbers if int(w[4]) % 2 == 1)
    if not odd_start:
        wrong(f"{at}: a chart without numbers of rows")
        return True
    x = odd_start.most_common(1)[0][0]
    odd = [w for w in numbers if abs(w[0] - x) <= 1.5 and int(w[4]) % 2 == 1]
    rows = {int(w[4]): middle(w, 1) for w in odd}
    steps = [(rows[a] - rows[a + 2]) / 2 for a in rows if a + 2 in rows and not even & {a, a + 1, a + 2}]
    step = statistics.median(steps) if steps else 0
    for w in numbers:
        row = int(w[4])
        wanted = [rows[r] + (r - row) * step for r in range(row - 5, row + 6, 2) if r in rows]
        if row % 2 == 0 and w[2] < x and any(abs(middle(w, 1) - y) < 0.6 * step for y in wanted):
            rows[row] = middle(w, 1)
    for a in sorted(rows):
        if a + 2 in rows and not even & {a, a + 1, a + 2}:
            high = (rows[a] - rows[a + 2]) * POINT / 2
            if not 2.49 <= high <= 40:
                wrong(f"{at}: rows {a} and {a + 2}: a cell is {high:.2f} mm high")
    low = max(rows.values())
    below = [w for w in numbers if w[1] > low + 2 and w[2] < x and int(w[4]) % 10 == 0]
    line = min((w[1] for w in below), default=0)  # the cast-on's count stands lower
    across = {int(w[4]): middle(w, 0) for w in below if w[1] < line + 2}
    for n in across:
        if n + 10 in across and "alike" not in texts:
            wide = (across[n] - across[n + 10]) * POINT / 10
            if wide < 2.49:
                wrong(f"{at}: stitches {n} and {n + 10}: a cell is {wide:.2f} mm wide")
    for missing in sorted(told - even - set(rows)):
        wrong(f"{at}: row {missing} has no number")
    return True


def overlap(a, b):
    w = min(a[2], b[2]) - max(a[0], b[0])
    # A box holds room above and below its letters: a third of it may meet another's.
    h = min(a[3], b[3]) - max(a[1], b[1])
    least = min(a[3] - a[1], b[3] - b[1])
    return w > 1.0 and h > 0.34 * least


with tempfile.TemporaryDirectory() as folder:
    for demo in sorted(glob.glob(resources + "/demos/*.scye")):
        for paper in ("a4", "letter"):
            for unit in ("cm", "in"):
                name = f"{os.path.basename(demo)} {paper} {unit}"
                pdf = folder + "/booklet.pdf"
                made = subprocess.run(
                    [program, "draft", demo, "--booklet", pdf, "--paper", paper, "--unit", unit],
                    capture_output=True, text=True, env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
                )
                if made.returncode != 0:
                    wrong(f"{name}: {made.stderr}")
                    continue
                pages = charts = 0
                for number, width, height, words in words_of(pdf):
                    pages += 1
                    at = f"{name}, page {number}"
                    # A cover is a picture and whose it is.
                    if len(words) < (3 if number == 1 else 8):
                        wrong(f"{at}: nearly empty")
                    for w in words:
                        if w[0] < MARGIN or w[1] < MARGIN or w[2] > width - MARGIN or w[3] > height - MARGIN:
                            wrong(f"{at}: off the page: {w}")
                        # A box is as high as the face's ascent and descent, 1.16 of the letters in the
                        # face that the tests install; of words that stand upright it is as wide.
                        least = min(w[3] - w[1], w[2] - w[0]) if len(w[4]) > 2 else max(w[3] - w[1], w[2] - w[0])
                        if least < 1.1 * 6:
                            wrong(f"{at}: smaller than 6 points: {w}")
                    charts += check_chart(at, words)
                    words.sort(key=lambda w: w[1])
                    for i, a in enumerate(words):
                        for b in itertools.takewhile(lambda b: b[1] < a[3], words[i + 1 :]):
                            if overlap(a, b):
                                wrong(f"{at}: {a[4]!r} and {b[4]!r} lie over each other: {a[:4]} {b[:4]}")
                if charts < 3:
                    wrong(f"{name}: {charts} pages of charts only")
                if pages < 8:
                    wrong(f"{name}: {pages} pages only")
print(f"{bad} wrong")
sys.exit(1 if bad else 0)

# The pages of booklets as a reader of PDF finds them (poppler's pdftotext): no word lies off the page
# or over another, none is smaller than 6 points. Over all demo designs, both papers and both units.
# Usage: booklet_pages.py PROGRAM RESOURCES_DIR
import glob, os, re, shutil, subprocess, sys, tempfile

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
                pages = 0
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
                    for i, a in enumerate(words):
                        for b in words[i + 1:]:
                            if overlap(a, b):
                                wrong(f"{at}: {a[4]!r} and {b[4]!r} lie over each other: {a[:4]} {b[:4]}")
                if pages < 8:
                    wrong(f"{name}: {pages} pages only")
print(f"{bad} wrong")
sys.exit(1 if bad else 0)

package pdf

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"bodkin/process"
	"bodkin/sheets"
	"bodkin/sheets/figure"
	"bodkin/sheets/sheettest"
)

// Rasters are made at twice the 96 dots to the inch that a browser takes a mm to be
// by, so that a hairline is more than a dot.
const dotsPerMM = 192 / 25.4

// TestFiguresAreTheSameInPDFAndSVG draws the figures of real plans, those of every
// reader's sheet, below one another, with fpdf on a page and as SVG in a browser, makes
// pictures of both (poppler's pdftoppm, Chromium), and compares how dark they are
// square by square; without their words, whose typeface differs, and then whether
// words stand where they should in both.
func TestFiguresAreTheSameInPDFAndSVG(t *testing.T) {
	pdftoppm, chromium := sheettest.Program(t, "pdftoppm"), sheettest.Program(t, "chromium")
	var figs []figure.Figure
	seen := map[string]bool{}
	for _, p := range []struct {
		plan    *process.Plan
		readers []sheets.Reader
	}{
		{sheettest.Kept(t, "../testdata/shell-top.json"), []sheets.Reader{sheets.Maker, sheets.Class}},
		{sheettest.Kept(t, "../testdata/open-coat.json"), []sheets.Reader{sheets.Maker, sheets.Bench}},
		{sheettest.Started(t, "waisted-dress"), []sheets.Reader{sheets.Bench}},
	} {
		for _, r := range p.readers {
			for _, d := range sheets.Compose(p.plan, sheets.Options{For: r, FiguresAt: "f/"}).Figures {
				if drawn := string(d.Figure.SVG()); !seen[drawn] { // readers share many
					seen[drawn] = true
					figs = append(figs, d.Figure)
				}
			}
		}
	}
	if len(figs) < 40 {
		t.Fatalf("only %d figures", len(figs))
	}
	for len(figs) > 0 {
		n := 1
		for n < len(figs) && topOf(figs, n+1) < tallest {
			n++
		}
		sameInBoth(t, pdftoppm, chromium, figs[:n])
		figs = figs[n:]
	}
}

// tallest is how high a picture may be, mm: browsers draw no more than 16384 dots.
const tallest = 2000

// sameInBoth compares some figures.
func sameInBoth(t *testing.T, pdftoppm, chromium string, figs []figure.Figure) {
	t.Helper()
	var bare []figure.Figure
	for _, f := range figs {
		f.Items = slices.DeleteFunc(slices.Clone(f.Items), func(it figure.Item) bool { _, words := it.(figure.Text); return words })
		bare = append(bare, f)
	}
	lines := [2]*image.Gray{byFpdf(t, pdftoppm, bare), bySVG(t, chromium, bare)}
	whole := [2]*image.Gray{byFpdf(t, pdftoppm, figs), bySVG(t, chromium, figs)}
	for k, fig := range figs {
		at := topOf(figs, k)
		// Antialiasing differs at every edge, and a hatch of hairlines is grey
		// here and nearly so there: squares of 3 mm may differ by a tenth, all
		// of a figure together by a hundredth.
		const side = 3.0
		worst, sum, squares := 0.0, 0.0, 0
		ink := [2]float64{}
		for y := 0.0; y < fig.Height; y += side {
			for x := 0.0; x < fig.Width; x += side {
				a, b := dark(lines[0], x, at+y, side, side), dark(lines[1], x, at+y, side, side)
				worst, sum, squares = max(worst, math.Abs(a-b)), sum+math.Abs(a-b), squares+1
				ink[0], ink[1] = ink[0]+a, ink[1]+b
			}
		}
		if worst > 0.1 || sum/float64(squares) > 0.01 || ink[0] == 0 {
			t.Errorf("%s: a square differs by %.3f, the figure by %.4f; ink %.1f and %.1f", fig.Name, worst, sum/float64(squares), ink[0], ink[1])
		}
		for _, it := range fig.Items {
			w, ok := it.(figure.Text)
			if !ok || w.Words == "" || w.Turn != 0 {
				continue
			}
			// About a letter each side of the anchor, from the baseline up.
			x := w.At.X - w.Size/2
			switch w.Anchor {
			case figure.Start:
				x = w.At.X
			case figure.End:
				x = w.At.X - w.Size
			}
			for n, kind := range []string{"fpdf", "SVG"} {
				if with, without := dark(whole[n], x, at+w.At.Y-0.8*w.Size, w.Size, w.Size), dark(lines[n], x, at+w.At.Y-0.8*w.Size, w.Size, w.Size); with <= without {
					t.Errorf("%s by %s: %q is not at %.1f, %.1f", fig.Name, kind, w.Words, w.At.X, w.At.Y)
				}
			}
		}
	}
}

const figureGap = 5 // mm between the figures of a picture

func topOf(figs []figure.Figure, k int) float64 {
	top := 0.0
	for _, f := range figs[:k] {
		top = math.Ceil((top+f.Height+figureGap)*dotsPerMM) / dotsPerMM // edges are shaded alike where dots begin alike
	}
	return top
}

func sizeOf(figs []figure.Figure) (width, height float64) {
	for _, f := range figs {
		width = max(width, f.Width)
	}
	return math.Ceil(width), math.Ceil(topOf(figs, len(figs)))
}

// byFpdf is the picture of the figures on one page.
func byFpdf(t *testing.T, pdftoppm string, figs []figure.Figure) *image.Gray {
	t.Helper()
	width, height := sizeOf(figs)
	f := &flow{typesetter: &typesetter{}}
	s := &slab{}
	for k, fig := range figs {
		f.drawFigure(s, fig, 0, topOf(figs, k), 1)
	}
	var out bytes.Buffer
	if err := writePDF(&out, &drawing{width: width, height: height, pages: []page{{s.ink, s.words}}}, Options{Title: "Figures", Lang: "en"}); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "figures.pdf")
	if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.CommandContext(t.Context(), pdftoppm, "-r", "192", "-png", "-singlefile", file, filepath.Join(dir, "figures")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v\n%s", err, said)
	}
	return picture(t, filepath.Join(dir, "figures.png"))
}

// bySVG is the picture of the figures in a browser.
func bySVG(t *testing.T, chromium string, figs []figure.Figure) *image.Gray {
	t.Helper()
	width, height := sizeOf(figs)
	var page bytes.Buffer
	page.WriteString("<!doctype html><meta charset=utf-8><style>body{margin:0;background:#fff}svg{position:absolute;left:0}</style>")
	for k, fig := range figs {
		page.Write(bytes.Replace(fig.SVG(), []byte("<svg "), fmt.Appendf(nil, `<svg style="top:%.5fmm" `, topOf(figs, k)), 1))
	}
	dir := t.TempDir()
	file, shot := filepath.Join(dir, "figures.html"), filepath.Join(dir, "figures.png")
	if err := os.WriteFile(file, page.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 4*time.Minute)
	defer cancel()
	if said, err := exec.CommandContext(ctx, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--force-device-scale-factor=2",
		"--user-data-dir="+t.TempDir(), fmt.Sprintf("--window-size=%.0f,%.0f", math.Ceil(width*dotsPerMM/2), math.Ceil(height*dotsPerMM/2)), "--screenshot="+shot, "file://"+file).CombinedOutput(); err != nil {
		t.Fatalf("chromium: %v\n%s", err, said)
	}
	return picture(t, shot)
}

func picture(t *testing.T, file string) *image.Gray {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	out := image.NewGray(in.Bounds())
	draw.Draw(out, out.Rect, in, in.Bounds().Min, draw.Src)
	return out
}

// dark is how dark a rectangle is on the whole, 0 white and 1 black; mm. What
// lies beyond the picture is white.
func dark(p *image.Gray, left, top, width, height float64) float64 {
	x0, x1 := int(left*dotsPerMM), int((left+width)*dotsPerMM)
	y0, y1 := int(top*dotsPerMM), int((top+height)*dotsPerMM)
	sum := 0.0
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			if image.Pt(x, y).In(p.Rect) {
				sum += 1 - float64(p.Pix[p.PixOffset(x, y)])/255
			}
		}
	}
	return sum / float64(max((x1-x0)*(y1-y0), 1))
}

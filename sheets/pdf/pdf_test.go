package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bodkin/sheets/figure"
	"bodkin/sheets/sheettest"

	"pgregory.net/rapid"
)

func written(t testing.TB, markdown []byte, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, markdown, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func saved(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, data, 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

// bodyText is what pdftotext (Poppler) reads within the margins.
func bodyText(t testing.TB, path string, d *drawing, mode string) string {
	t.Helper()
	const perMM = 72 / 25.4 // at 72 dots an inch a dot is a point
	crop := func(v float64) string { return fmt.Sprint(int(math.Round(v * perMM))) }
	out, err := exec.Command(sheettest.Program(t, "pdftotext"), mode, "-enc", "UTF-8", "-r", "72",
		"-x", crop(d.body.Left-2), "-y", crop(d.body.Top-2), "-W", crop(d.body.Width()+4), "-H", crop(d.body.Height()+4), path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// wordsDrawn is the drawing's words in the order they are drawn.
func (d *drawing) wordsDrawn() []string {
	var out []string
	for _, p := range d.pages {
		for _, w := range p.words {
			if w.Role != roleFrame {
				out = append(out, strings.Fields(w.Text)...)
			}
		}
	}
	return out
}

// Poppler reads back the words of the sample in the order they were written.
func TestReadBackByPoppler(t *testing.T) {
	for _, paper := range []Paper{A4, A5, Letter} {
		o := sampleOptions()
		o.Paper = paper
		path := saved(t, written(t, sampleMarkdown, o))
		d, err := lay(sampleMarkdown, &o)
		if err != nil {
			t.Fatal(err)
		}
		raw := bodyText(t, path, d, "-raw")
		if got, want := squeeze(raw), strings.Join(d.wordsDrawn(), ""); got != want {
			t.Errorf("paper %d: %s", paper, difference(got, want))
		}
	}
}

func TestPlainTextReadsBackWordForWord(t *testing.T) {
	sheettest.Program(t, "pdftotext")
	texts := rapid.Custom(func(rt *rapid.T) *manuscript {
		m := &manuscript{short: true}
		for range rapid.IntRange(1, 12).Draw(rt, "blocks") {
			fmt.Fprintf(&m.markdown, "%s%s\n\n", rapid.SampledFrom([]string{"", "", "> ", "- ", "- [ ] ", "## "}).Draw(rt, "kind"), m.run(rt, 40))
		}
		return m
	})
	for seed := range 12 {
		m := texts.Example(seed)
		o := Options{Title: "Words"}
		d, err := lay([]byte(m.markdown.String()), &o)
		if err != nil {
			t.Fatal(err)
		}
		path := saved(t, written(t, []byte(m.markdown.String()), o))
		for _, mode := range []string{"-raw", "-layout"} {
			if got := strings.Fields(bodyText(t, path, d, mode)); !slices.Equal(got, m.words) {
				t.Errorf("seed %d, %s: %s", seed, mode, difference(strings.Join(got, " "), strings.Join(m.words, " ")))
			}
		}
	}
}

func TestQPDFFindsNoFault(t *testing.T) {
	qpdf := sheettest.Program(t, "qpdf")
	for name, md := range map[string][]byte{"sample": sampleMarkdown, "empty": nil, "deep headings": []byte("###### a\n\n# b\n\n### c\n\n# a")} {
		path := saved(t, written(t, md, sampleOptions()))
		if out, err := exec.Command(qpdf, "--check", path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

func TestProperties(t *testing.T) {
	info := sheettest.Program(t, "pdfinfo")
	o := Options{Title: "Áo dài ½", Author: "Ọmọ́tọ́lá", Notice: "set in DejaVu Sans", Lang: "vi-VN", Paper: A5, Date: time.Date(2025, 3, 4, 5, 6, 7, 0, time.UTC)}
	out, err := exec.Command(info, "-rawdates", saved(t, written(t, []byte("# x\n\n[a](#x)"), o))).Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"Title:           Áo dài ½", "Author:          Ọmọ́tọ́lá", "Subject:         set in DejaVu Sans",
		"Creator:         bodkin", "Producer:        bodkin", "CreationDate:    D:20250304050607",
		"Pages:           1", "JavaScript:      no",
		"419.53 x 595.28 pts", // ISO 216: 148 by 210 mm
	} {
		if !strings.Contains(string(out), want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	for seed := range 10 {
		md := []byte(rapid.Custom(drawManuscript).Example(seed).markdown.String())
		if !bytes.Equal(written(t, md, Options{}), written(t, md, Options{})) {
			t.Errorf("seed %d: two runs differ", seed)
		}
	}
}

func TestMissingGlyphs(t *testing.T) {
	err := Write(io.Discard, []byte("a\n\n| 縫 |\n|--|\n| b \U0001F9F5 縫 |\n"), Options{Title: "い", Figures: map[string]figure.Figure{}})
	var missing *MissingGlyphsError
	if !errors.As(err, &missing) {
		t.Fatalf("got %v", err)
	}
	want := []MissingGlyph{{'縫', "line 3"}, {'\U0001F9F5', "line 5"}, {'い', "the title"}}
	if !slices.Equal(missing.Runes, want) {
		t.Errorf("got %v, want %v", missing.Runes, want)
	}
	for _, part := range []string{"U+7E2B", "U+1F9F5", "line 5", "the title"} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q does not name %s", err, part)
		}
	}
	o := Options{Replace: "?", Title: "い \U0001F9F5"}
	d := set(t, "a 縫 \U0001F9F5b", o)
	if got := texts(d); !slices.Equal(got, []string{"a ? ?b"}) {
		t.Errorf("replaced: %q", got)
	}
	if err := Write(io.Discard, []byte("a 縫 \U0001F9F5b"), o); err != nil {
		t.Errorf("replaced: %v", err)
	}
	in := Options{Figures: map[string]figure.Figure{"k": {Name: "seam", Width: 9, Height: 9, Items: []figure.Item{figure.Text{Size: 3, Words: "縫"}}}}}
	if err := Write(io.Discard, []byte("![](k)"), in); err == nil || !strings.Contains(err.Error(), "figure seam") {
		t.Errorf("in a figure: %v", err)
	}
}

func TestAlphabetsReadBack(t *testing.T) {
	text := "ÀÉÎÕÜßàéîõüÿ ĀāĒēŁłŐőŠšŻż Đường may áo dài ắằẳẵặ ẸẹỌọṢṣ Aṣọ ẹ̀yà ΑΒΓαβγώ Швейная нитка ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ☐ ☑ → × ± ≤ ≥ ′ ″ 1⁄16"
	md := []byte(text + "\n\n**" + text + "**\n\n*" + text + "*\n\n`" + text + "`")
	o := Options{}
	d, err := lay(md, &o)
	if err != nil {
		t.Fatal(err)
	}
	got := bodyText(t, saved(t, written(t, md, Options{})), d, "-raw")
	if want := strings.Repeat(squeeze(text), 4); squeeze(got) != want {
		t.Error(difference(squeeze(got), want))
	}
}

func TestRefusals(t *testing.T) {
	for name, c := range map[string]struct {
		markdown string
		o        Options
		want     string
	}{
		"not UTF-8":      {"a\nb\xff", Options{}, "line 2: byte 0xff is not UTF-8"},
		"small type":     {"a", Options{TypeSize: 2}, "type size of 2 pt"},
		"NaN type":       {"a", Options{TypeSize: math.NaN()}, "type size of NaN"},
		"unknown paper":  {"a", Options{Paper: 9}, "paper 9 is not known"},
		"a language":     {"a", Options{Lang: "en) /X"}, "is not a language tag"},
		"a sizeless one": {"a", Options{Figures: map[string]figure.Figure{"f": {Name: "f"}}}, `figure under "f"`},
	} {
		var b bytes.Buffer
		err := Write(&b, []byte(c.markdown), c.o)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes were written all the same", name, b.Len())
		}
	}
}

type failing struct{}

var errFull = errors.New("the disk is full")

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestPaperTooSmallForItsType(t *testing.T) {
	for _, c := range []struct {
		paper Paper
		size  float64
		good  bool
	}{{A5, 24, false}, {A5, 18, false}, {A5, 17, true}, {A4, 24, true}, {Letter, 24, true}} {
		var b bytes.Buffer
		err := Write(&b, []byte("words"), Options{Paper: c.paper, TypeSize: c.size})
		if (err == nil) != c.good || !c.good && b.Len() > 0 {
			t.Errorf("paper %d at %v pt: %v, %d bytes written", c.paper, c.size, err, b.Len())
		}
	}
}

func TestWriterErrorComesBack(t *testing.T) {
	if err := Write(failing{}, []byte("a"), Options{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

func FuzzLay(f *testing.F) {
	f.Add(string(sampleMarkdown))
	for _, s := range []string{"", "# ", "- [ ]", "1.\n2.", "|a|\n|-|\n", "> ```\n> x", "[a]: b 'c\nd'\n\n[a]", "<!--", "***a** b*", "![](x)![](y)", "&#xD800;", "a\\\n\\\nb", "-\t\tx", "~~a\n\nb~~", "\x00\u00ad\u00ad \u200b", "| a |\n|--|\n| " + strings.Repeat("w ", 3000) + "|"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		o := Options{Replace: "?", Paper: A5}
		d, err := lay([]byte(s), &o)
		if err != nil {
			return
		}
		ts := &typesetter{}
		for _, p := range d.pages {
			for _, w := range p.words {
				if ts.showable(w.Style, w.Text, "here"); ts.err() != nil {
					t.Fatalf("%q: %v", w.Text, ts.err())
				}
			}
		}
	})
}

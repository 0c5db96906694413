package pdf

import (
	"fmt"
	"strings"
	"testing"

	"bodkin/sheets/figure"

	"pgregory.net/rapid"
)

// manuscript is Markdown made up for a test, with what it says: every word in
// order, and for each table row its words.
type manuscript struct {
	markdown strings.Builder
	words    []string
	rows     [][]string
	count    int
	short    bool // in a table, where a row of long words might outgrow a page
}

// word is a new word, unlike any other in the manuscript; most are short.
func (m *manuscript) word(t *rapid.T) string {
	stems := []string{"seam", "press", "ẹ̀yà", "đường", "κλωστή", "нитка", "½", "15", "a", "georgette", "Überwendlingsnaht", "×"}
	m.count++
	w := fmt.Sprintf("%s%dq", rapid.SampledFrom(stems).Draw(t, "stem"), m.count)
	if !m.short && rapid.IntRange(0, 60).Draw(t, "long") == 0 {
		w = strings.Repeat(w, 14)
	}
	m.words = append(m.words, w)
	return w
}

// run is some words, now and then marked up.
func (m *manuscript) run(t *rapid.T, most int) string {
	var out []string
	for range rapid.IntRange(1, most).Draw(t, "words") {
		mark := rapid.SampledFrom([]string{"%s", "%s", "%s", "%s", "**%s**", "*%s*", "`%s`", "~~%s~~", "[%s](#x)", "[%s](https://example.org)"}).Draw(t, "mark")
		out = append(out, fmt.Sprintf(mark, m.word(t)))
	}
	return strings.Join(out, " ")
}

func (m *manuscript) block(t *rapid.T, indent string) {
	put := func(format string, args ...any) { fmt.Fprintf(&m.markdown, indent+format+"\n", args...) }
	switch rapid.IntRange(0, 7).Draw(t, "kind") {
	case 0, 1:
		put("%s\n", m.run(t, 60))
	case 2:
		if indent == "" {
			put("%s %s\n", strings.Repeat("#", rapid.IntRange(1, 6).Draw(t, "level")), m.run(t, 6))
		}
	case 3:
		for range rapid.IntRange(1, 12).Draw(t, "items") {
			put("- [ ] %s", m.run(t, 20))
		}
		put("")
	case 4:
		for i := range rapid.IntRange(1, 6).Draw(t, "items") {
			put("%d. %s", 7+i, m.run(t, 9))
		}
		put("")
	case 5:
		put("> %s\n", m.run(t, 40))
	case 6:
		if indent == "" {
			m.table(t)
		}
	case 7:
		put("```\n%s%s\n%s```\n", indent, strings.Join([]string{m.word(t), m.word(t)}, " "), indent)
	}
}

func (m *manuscript) table(t *rapid.T) {
	m.short = true
	defer func() { m.short = false }()
	columns := rapid.IntRange(1, 6).Draw(t, "columns")
	row := func(most int) {
		from := len(m.words)
		for range columns {
			fmt.Fprintf(&m.markdown, "| %s ", m.run(t, most))
		}
		m.markdown.WriteString("|\n")
		m.rows = append(m.rows, m.words[from:])
	}
	row(1)
	m.markdown.WriteString(strings.Repeat("|--:", columns) + "|\n")
	for range rapid.IntRange(1, 25).Draw(t, "rows") {
		row(5)
	}
	m.markdown.WriteString("\n")
}

func drawManuscript(t *rapid.T) *manuscript {
	m := &manuscript{}
	for range rapid.IntRange(1, 25).Draw(t, "blocks") {
		m.block(t, "")
	}
	return m
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

// body is the text of some roles on all pages, without spaces.
func (d *drawing) told(roles ...role) string {
	var b strings.Builder
	for _, p := range d.pages {
		for _, w := range p.words {
			for _, r := range roles {
				if w.Role == r {
					b.WriteString(w.Text)
				}
			}
		}
	}
	return squeeze(b.String())
}

// difference is where two texts part, with a little of each.
func difference(got, want string) string {
	g, w := []rune(got), []rune(want)
	i := 0
	for i < len(g) && i < len(w) && g[i] == w[i] {
		i++
	}
	near := func(r []rune) string { return string(r[max(0, i-30):min(len(r), i+30)]) }
	return fmt.Sprintf("after %d letters got …%s… want …%s…", i, near(g), near(w))
}

func TestLayoutLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawManuscript(t)
		o := Options{
			Paper:    rapid.SampledFrom([]Paper{A4, A5, Letter}).Draw(t, "paper"),
			TypeSize: rapid.SampledFrom([]float64{0, 8, 14}).Draw(t, "size"),
			Title:    "Laws",
		}
		d, err := lay([]byte(m.markdown.String()), &o)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := d.told(roleBody), strings.Join(m.words, ""); got != want {
			t.Fatalf("words lost, doubled or out of order: %s", difference(got, want))
		}
		for n, p := range d.pages {
			standsInPlace(t, d, n, p)
		}
		for _, row := range m.rows {
			rowOnOnePage(t, d, row)
		}
	})
}

// failer is a test, or a try of a property.
type failer interface{ Fatalf(string, ...any) }

func standsInPlace(t failer, d *drawing, n int, p page) {
	const slack = 0.01
	last := fmt.Sprintf("page %d of %d", n+1, len(d.pages))
	foot := 0
	for i, w := range p.words {
		if w.Turn != 0 {
			continue // only within a figure, whose own laws are tested there
		}
		b := w.box()
		within := figure.Box{Right: d.width, Bottom: d.height}
		if w.Role != roleFrame {
			within = d.body
		} else if b.Bottom > d.body.Top && b.Top < d.body.Bottom {
			t.Fatalf("page %d: %q of the frame reaches into the body", n+1, w.Text)
		}
		if b.Left < within.Left-slack || b.Right > within.Right+slack || b.Top < within.Top-slack || b.Bottom > within.Bottom+slack {
			t.Fatalf("page %d: %q at %+v leaves %+v", n+1, w.Text, b, within)
		}
		if w.Text == last {
			foot++
		}
		for _, v := range p.words[:i] {
			if v.Turn != 0 {
				continue
			}
			c := v.box()
			c.Left, c.Right, c.Top, c.Bottom = c.Left+slack, c.Right-slack, c.Top+slack, c.Bottom-slack
			if b.Overlaps(c) {
				t.Fatalf("page %d: %q %+v lies on %q %+v", n+1, w.Text, b, v.Text, c)
			}
		}
	}
	for _, it := range p.ink {
		b := figure.Bounds([]figure.Item{it}, nil)
		frame := b.Bottom < d.body.Top
		if b.Left < d.body.Left-0.5 || b.Right > d.body.Right+0.5 || !frame && b.Top < d.body.Top-0.5 || b.Bottom > d.body.Bottom+0.5 {
			t.Fatalf("page %d: ink at %+v leaves %+v", n+1, b, d.body)
		}
	}
	if foot != 1 {
		t.Fatalf("page %d says %q %d times", n+1, last, foot)
	}
}

func rowOnOnePage(t *rapid.T, d *drawing, row []string) {
	// The words of a row are told in order, so its first and last tell enough;
	// a word broken for want of room is looked for by its beginning.
	find := func(word string) int {
		for n, p := range d.pages {
			for _, w := range p.words {
				if w.Role == roleBody && strings.Contains(w.Text, word) {
					return n
				}
			}
		}
		return -1
	}
	a, b := find(row[0]), find(row[len(row)-1])
	if a >= 0 && b >= 0 && a != b {
		t.Fatalf("a row begins with %q on page %d and ends with %q on page %d", row[0], a+1, row[len(row)-1], b+1)
	}
}

func TestPageEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawManuscript(t)
		blocks, err := read([]byte(m.markdown.String()), nil)
		if err != nil {
			t.Fatal(err)
		}
		f := &flow{typesetter: &typesetter{}, measure: measureOf(10.5, 1.12), tall: 120}
		f.document(blocks, frame{20, 130})
		pages := paginate(f.slabs, f.tall)
		whole := wholeSteps(f.slabs, f.tall)
		seen := map[int]int{}
		k := 0
		for n, p := range pages {
			var prior *placedSlab
			for i := range p {
				s := &p[i]
				if s.y+s.height > f.tall+1e-6 && len(p) > 1 {
					t.Fatalf("page %d is overfull: %v", n+1, s.y+s.height)
				}
				if prior != nil && s.y < prior.y+prior.height-1e-9 {
					t.Fatalf("page %d: slabs lie on one another", n+1)
				}
				prior = s
				if s.repeat {
					if i != 0 {
						t.Fatalf("page %d repeats a head in its middle", n+1)
					}
					continue
				}
				if i == 0 && s.head != nil {
					t.Fatalf("page %d begins with a row and no head", n+1)
				}
				if at, ok := seen[s.step]; ok && whole[s.step] && at != n {
					t.Fatalf("step %d stands on pages %d and %d, though it fits on one", s.step, at+1, n+1)
				}
				seen[s.step] = n
				k++
			}
			if n+1 < len(pages) && prior.marks != nil {
				t.Fatalf("page %d ends with a heading", n+1)
			}
		}
		if k != len(f.slabs) {
			t.Fatalf("%d slabs of %d were placed", k, len(f.slabs))
		}
	})
}

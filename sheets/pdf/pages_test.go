package pdf

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// dealt tells the heights of the slabs on each page, a repeated head as "h".
func dealt(slabs []slab, tall float64) []string {
	var out []string
	for _, p := range paginate(slabs, tall) {
		var page []string
		for _, s := range p {
			if s.repeat {
				page = append(page, "h")
				continue
			}
			page = append(page, fmt.Sprint(s.height))
		}
		out = append(out, strings.Join(page, " "))
	}
	return out
}

// The page ends worked out by hand, on pages 10 tall.
func TestPaginate(t *testing.T) {
	head := &slab{height: 2}
	mark := []headingMark{{id: "x"}}
	for _, c := range []struct {
		what  string
		slabs []slab
		want  []string
	}{
		{"as full as can be", []slab{{height: 4}, {height: 5, before: 1}, {height: 3}}, []string{"4 5", "3"}},
		{"the space above is counted", []slab{{height: 4}, {height: 5, before: 2}}, []string{"4", "5"}},
		{"but not at the top of a page", []slab{{height: 9}, {height: 9.5, before: 2}}, []string{"9", "9.5"}},
		{"a heading goes with what follows", []slab{{height: 7}, {height: 2, keep: true, marks: mark}, {height: 2}}, []string{"7", "2 2"}},
		{"so do two", []slab{{height: 5}, {height: 2, keep: true, marks: mark}, {height: 2, keep: true, marks: mark}, {height: 2}}, []string{"5", "2 2 2"}},
		{"a step is kept whole", []slab{{height: 6}, {height: 1, step: 1, keep: true, marks: mark}, {height: 2, step: 1, rank: rankBlock}, {height: 3, step: 1}}, []string{"6", "1 2 3"}},
		{
			"a long step ends a page after an item", []slab{
				{height: 1, step: 1, keep: true, marks: mark},
				{height: 3, step: 1, rank: rankItem},
				{height: 3, step: 1},
				{height: 2.5, step: 1},
				{height: 3, step: 1, rank: rankItem},
			},
			[]string{"1 3", "3 2.5 3"},
		},
		{
			"within one only for want of anything else", []slab{
				{height: 1, step: 1, keep: true, marks: mark},
				{height: 4, step: 1}, {height: 4, step: 1}, {height: 4, step: 1, rank: rankItem},
			},
			[]string{"1 4 4", "4"},
		},
		{"a heading is left alone where the next slab leaves it no room", []slab{{height: 2, keep: true, marks: mark}, {height: 9}}, []string{"2", "9"}},
		{
			"a table's head again", []slab{
				{height: 2, keep: true},
				{height: 4, head: head, rank: rankItem},
				{height: 4, head: head, rank: rankItem},
				{height: 4, head: head, rank: rankItem},
				{height: 5, head: head, rank: rankItem},
				{height: 1},
			},
			[]string{"2 4 4", "h 4", "h 5 1"},
		},
		{"too tall for any page", []slab{{height: 1}, {height: 12}, {height: 1}}, []string{"1", "12", "1"}},
		{"the line above a heading is left out at the top", []slab{{height: 9}, {height: 1, before: 1, keep: true, opener: true, marks: mark}, {height: 9.5}}, []string{"9", "0 9.5"}},
		{"nothing", nil, nil},
	} {
		if got := dealt(c.slabs, 10); !cmp.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}

func TestTableHeadOnEachPage(t *testing.T) {
	md := "| Piece | Cut |\n|:--|--:|\n" + strings.Repeat("| front | 1 on fold |\n", 90)
	d := set(t, md, Options{})
	if len(d.pages) < 2 {
		t.Fatalf("%d pages", len(d.pages))
	}
	for n, p := range d.pages {
		w := p.words[0]
		want := roleRepeat
		if n == 0 {
			want = roleBody
		}
		if w.Text != "Piece" || w.Role != want {
			t.Errorf("page %d begins with %+v", n+1, w)
		}
	}
}

func TestNoRowStandsAloneOnALaterPage(t *testing.T) {
	for n := 20; n < 60; n++ {
		d := set(t, "| a |\n|--|\n"+strings.Repeat("| row |\n", n), Options{})
		for i, p := range d.pages {
			rows := 0
			for _, w := range p.words {
				if w.Text == "row" {
					rows++
				}
			}
			if rows < 2 {
				t.Errorf("of %d rows page %d has %d", n, i+1, rows)
			}
		}
	}
}

func TestARowTallerThanAPageIsTorn(t *testing.T) {
	md := "| a | b |\n|--|--|\n| " + strings.Repeat("needle ", 1500) + "| once |\n"
	d := set(t, md, Options{})
	if len(d.pages) < 2 {
		t.Fatalf("%d pages", len(d.pages))
	}
	if got, want := strings.Count(d.told(roleBody), "needle"), 1500; got != want {
		t.Errorf("%d words of %d are left", got, want)
	}
	for n, p := range d.pages {
		for _, w := range p.words {
			if w.Role != roleFrame && w.box().Bottom > d.body.Bottom+0.01 {
				t.Fatalf("page %d: %q leaves the body", n+1, w.Text)
			}
		}
	}
}

func TestDeepNestingStaysWithinTheMargins(t *testing.T) {
	for _, md := range []string{strings.Repeat("> ", 60) + "needle and thread", strings.Repeat("- ", 60) + "needle and thread"} {
		d := set(t, md, Options{Paper: A5, TypeSize: 17})
		for _, w := range shown(d) {
			if w.X < d.body.Left || w.X+w.Width > d.body.Right+0.01 {
				t.Errorf("%q at %v leaves the body %+v", w.Text, w.X, d.body)
			}
		}
	}
}

func TestManyColumnsStayWithinTheMargins(t *testing.T) {
	md := strings.Repeat("| aa ", 24) + "|\n" + strings.Repeat("|--", 24) + "|\n" + strings.Repeat("| bb ", 24) + "|\n"
	d := set(t, md, Options{Paper: A5})
	for _, w := range shown(d) {
		if w.X < d.body.Left || w.X+w.Width > d.body.Right+0.01 {
			t.Errorf("%q at %v leaves the body %+v", w.Text, w.X, d.body)
		}
	}
}

func TestLongTitlesAreShortened(t *testing.T) {
	d := set(t, "a", Options{Title: strings.Repeat("Choir top ", 30), RunningHead: strings.Repeat("for the class ", 20)})
	for _, w := range d.pages[0].words {
		if w.Role == roleFrame && w.Y < d.body.Top {
			if !strings.HasSuffix(w.Text, "…") || w.X < d.body.Left-0.01 || w.X+w.Width > d.body.Right+0.01 {
				t.Errorf("%+v", w)
			}
		}
	}
}

// TestPapersApart: every heading of level 2 but the first is the first thing on
// its page, and without the option they share pages.
func TestPapersApart(t *testing.T) {
	text := []byte("# All\n\nWords.\n\n## One\n\nWords.\n\n### 1 · First\n\nWords.\n\n## Two\n\nWords.\n")
	for _, apart := range []bool{true, false} {
		d, err := lay(text, &Options{Apart: apart})
		if err != nil {
			t.Fatal(err)
		}
		pages := 1
		if apart {
			pages = 2
		}
		if len(d.pages) != pages {
			t.Errorf("apart %v: %d pages, want %d", apart, len(d.pages), pages)
		}
		for _, b := range d.bookmarks {
			if apart && b.title == "Two" && b.place.y > d.body.Top+1e-9 {
				t.Errorf("%s stands %g mm down its page", b.title, b.place.y-d.body.Top)
			}
		}
	}
}

// Of a step that is longer than a page, the settings stay with what is done, and
// the room for notes with the last of it.
func TestLongStepIsNotTornAtItsEnds(t *testing.T) {
	for above := range 60 {
		md := strings.Repeat("line  \n", above) + "\n### 1 · Stitch\n\n**Machine · white**\n\n" +
			strings.Repeat("- [ ] act\n", 40+above) + "\n*My notes:*\n\n* * *\n"
		d := set(t, md, Options{})
		for n, p := range d.pages {
			var body []string
			for _, w := range p.words {
				if w.Role == roleBody {
					body = append(body, w.Text)
				}
			}
			if len(body) == 0 || body[0] == "My notes:" || body[len(body)-1] == "Machine · white" {
				t.Fatalf("after %d lines page %d has %q", above, n+1, body)
			}
		}
	}
}

// The head of every page says which steps stand on it, one that goes on from the page
// before among them, and nothing where none does; what the title says is not said
// again.
func TestHeadsNameTheSteps(t *testing.T) {
	var text strings.Builder
	text.WriteString("# Coat\n\nWords.\n\n## The steps\n\n")
	for n := 1; n <= 40; n++ {
		fmt.Fprintf(&text, "### Step %d · Table · Pin\n\n**About 2 min**\n\n", n)
		for range []int{1, 1, 2, 3, 90}[n%5] { // the last is longer than a page
			text.WriteString("- [ ] Pin the one to the other, and look whether it lies flat all along its edge, from end to end.\n")
		}
		text.WriteString("\n")
	}
	text.WriteString("## Notices\n\n### 7 seams\n\nWords.\n")
	for _, running := range []string{"", "Coat", "For the class"} {
		d, err := lay([]byte(text.String()), &Options{Title: "Coat", RunningHead: running})
		if err != nil {
			t.Fatal(err)
		}
		last, ranges, shared := 0, 0, 0
		for n, p := range d.pages {
			var head []string
			for _, w := range p.words {
				if w.Role == roleFrame && w.Y < d.body.Top && w.Text != "" {
					head = append(head, w.Text)
				}
			}
			if head[0] != "Coat" || len(head) > 2 {
				t.Fatalf("page %d is headed %q", n+1, head)
			}
			var begun []int // on the page
			for _, b := range d.bookmarks {
				var k int
				if _, err := fmt.Sscanf(b.title, "Step %d", &k); err == nil && b.page == n {
					begun = append(begun, k)
				}
			}
			goesOn := false // a line of the step before stands above the first heading
			for _, w := range p.words {
				goesOn = goesOn || w.Role == roleBody && strings.HasPrefix(w.Text, "Pin the one") && (len(begun) == 0 || w.Y < d.places[fmt.Sprintf("step-%d--table--pin", begun[0])].y)
			}
			if goesOn && len(begun) > 0 {
				shared++
			}
			first := 0
			switch {
			case goesOn:
				first = last
			case len(begun) > 0:
				first = begun[0]
			}
			if len(begun) > 0 {
				last = begun[len(begun)-1]
			}
			want := ""
			switch {
			case first == 0:
			case first == last:
				want = fmt.Sprintf("Step %d", first)
			default:
				want = fmt.Sprintf("Step %d–%d", first, last)
				ranges++
			}
			if running == "For the class" {
				want = strings.TrimSuffix("For the class · "+want, " · ")
			}
			if got := strings.Join(head[1:], ""); got != want {
				t.Errorf("page %d is headed %q opposite the title, want %q", n+1, got, want)
			}
		}
		if ranges < 3 || shared < 3 {
			t.Errorf("only %d pages of several steps, %d with one that goes on from the page before", ranges, shared)
		}
	}
}

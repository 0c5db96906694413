package templates_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"bodkin/seams/form"
	"bodkin/templates"
	"bodkin/templates/outline"
)

// fataler is what *testing.T and *rapid.T have in common.
type fataler interface {
	Helper()
	Fatalf(string, ...any)
	Errorf(string, ...any)
}

func load(t fataler, name string) *templates.Garment {
	t.Helper()
	g, err := templates.Load(name)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return g
}

// pairs writes "bust", "92 cm", … as they stand in a job.
func pairs(words ...string) form.Pairs[form.Text] {
	var out form.Pairs[form.Text]
	for i := 0; i < len(words); i += 2 {
		out = append(out, form.Pair[form.Text]{Key: form.Text{Value: words[i]}, Value: form.Text{Value: words[i+1]}})
	}
	return out
}

func makeIt(t fataler, name string, size, choices form.Pairs[form.Text]) *templates.Made {
	t.Helper()
	m, err := load(t, name).Make(size, choices)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return m
}

func near(t fataler, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.3f, want %.3f within %g", what, got, want, tolerance)
	}
}

func piece(t fataler, m *templates.Made, name string) *templates.Piece {
	t.Helper()
	for i := range m.Pieces {
		if m.Pieces[i].Name == name {
			return &m.Pieces[i]
		}
	}
	t.Fatalf("no piece %q", name)
	return nil
}

func edge(t fataler, m *templates.Made, name, of string) outline.Edge {
	t.Helper()
	e, ok := piece(t, m, name).Outline.Edge(of)
	if !ok {
		t.Fatalf("no edge %s.%s", name, of)
	}
	return e
}

func treatment(t fataler, m *templates.Made, name string) templates.Treatment {
	t.Helper()
	for _, x := range m.Treatments {
		if x.Name == name {
			return x
		}
	}
	t.Fatalf("no edge %q", name)
	return templates.Treatment{}
}

func TestEveryGarmentOnTheShelfLoads(t *testing.T) {
	want := []string{
		"a-line-skirt",
		"apron",
		"beginner-tunic",
		"bias-slip",
		"boxy-top",
		"child-dress",
		"circle-skirt",
		"darted-trousers",
		"knit-tee",
		"lined-waistcoat",
		"open-jacket",
		"pleated-skirt",
		"pull-on-skirt",
		"pull-on-trousers",
		"raglan-blouse",
		"shell-top",
		"shirt-blouse",
		"shirt-dress",
		"six-gore-skirt",
		"waisted-dress",
		"wrap-robe",
		"wrap-skirt",
	}
	if diff := cmp.Diff(want, templates.Names()); diff != "" {
		t.Error(diff)
	}
	for _, name := range templates.Names() {
		g := load(t, name)
		if g.Name != name {
			t.Errorf("the file of %q holds %q", name, g.Name)
		}
		if data, file := templates.Text(name); len(data) == 0 || !strings.Contains(file, name) {
			t.Errorf("no text of %q", name)
		}
		makeIt(t, name, nil, nil)
	}
	if _, err := templates.Load("shell-tpo"); err == nil {
		t.Error("a garment that is not there was loaded")
	}
}

// human is what a measure lies between, cm, given those before it: proportions
// of adults, from memory and wide. A measure that is not here is left to the
// garment.
func human(measure string, loose bool, cm map[string]float64) (least, most float64, ok bool) {
	given := func(name string) bool { _, ok := cm[name]; return ok }
	bust, hip := cm["bust"], cm["hip"]
	switch {
	case measure == "bust":
		return 76, 140, true
	case measure == "hip" && given("bust"):
		return max(78, bust-12), min(150, bust+26), true
	case measure == "hip":
		return 80, 150, true
	case measure == "waist" && given("hip") && loose:
		return max(54, hip-38), min(140, hip+4), true
	case measure == "waist" && given("hip"):
		return max(54, hip-34), min(130, hip-8), true
	case measure == "hip_depth":
		return 16, 28, true
	case measure == "rise" && given("hip"):
		return hip/5 + 5.5, hip/5 + 9.5, true
	case measure == "head":
		return 52, 61, true
	case measure == "bust_height":
		return bust/5 + 6.5, bust/5 + 9.5, true
	case measure == "underbust_height":
		return bust/5 + 13, bust/5 + 17, true
	case measure == "neck" && given("bust"):
		return bust/5 + 11, bust/5 + 19, true
	case measure == "nape_to_waist":
		return 38, 48, true
	case measure == "arm":
		return 50, 68, true
	case measure == "upper_arm":
		return bust/5 + 9, bust/5 + 15, true
	}
	return 0, 0, false
}

// body draws a size of a human shape, and choices over their whole range. What
// a garment can reckon is given now and then.
func body(t *rapid.T, g *templates.Garment) (size, choices form.Pairs[form.Text]) {
	cm := map[string]float64{}
	for _, name := range hipsFirst(g) {
		least, most, ok := human(name, g.Loose, cm)
		m, _ := g.Measures.Get(name)
		if !ok || !m.Reckoned.IsZero() && !rapid.Bool().Draw(t, name+" given") {
			continue
		}
		x := rapid.Float64Range(max(least, float64(m.Least)/10), min(most, float64(m.Most)/10)).Draw(t, name)
		cm[name] = math.Round(x*10) / 10
		size = append(size, pairs(name, fmt.Sprintf("%.1f cm", cm[name]))...)
	}
	for _, c := range g.Choices {
		name := c.Key.Value
		if words := c.Value.Words(); len(words) > 0 {
			choices = append(choices, pairs(name, rapid.SampledFrom(words).Draw(t, name))...)
			continue
		}
		if rapid.IntRange(0, 4).Draw(t, name+" left out") == 0 {
			continue
		}
		if !c.Value.IsLength() {
			least, most := plainNumber(t, c.Value.Least), plainNumber(t, c.Value.Most)
			x := rapid.Float64Range(least, most).Draw(t, name)
			choices = append(choices, pairs(name, fmt.Sprintf("%.3f", min(max(x, least), most)))...)
			continue
		}
		least, most := millimetres(t, c.Value.Least), millimetres(t, c.Value.Most)
		x := rapid.Float64Range(least, most).Draw(t, name)
		choices = append(choices, pairs(name, fmt.Sprintf("%.1f mm", min(max(math.Round(x*10)/10, least), most)))...)
	}
	return size, choices
}

// hipsFirst are the measures, the hips before the waist, which is drawn to them.
func hipsFirst(g *templates.Garment) []string {
	names := g.Measures.Keys()
	if k := slices.Index(names, "waist"); k >= 0 {
		names = append(slices.Delete(names, k, k+1), "waist")
	}
	return names
}

func plainNumber(t fataler, s form.Text) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s.Value, 64)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return x
}

// Some three hundred and more sizes and choices of each garment: every law holds, or the
// garment says what to change.
func TestLawsAtEverySize(t *testing.T) {
	for _, name := range templates.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			g := load(t, name)
			made, refused := 0, 0
			rapid.Check(t, func(t *rapid.T) {
				size, choices := body(t, g)
				m, err := g.Make(size, choices)
				if err != nil {
					refused++
					checkRefusal(t, err)
					return
				}
				made++
				checkLaws(t, m)
			})
			t.Logf("made %d, refused %d with a mend", made, refused)
			if made < 2*refused {
				t.Errorf("made only %d, refused %d", made, refused)
			}
		})
	}
}

// checkRefusal: only laws of the garment may refuse a human shape, each with a
// mend; a shape that crosses itself or a seam that does not fit is our fault.
func checkRefusal(t *rapid.T, err error) {
	fs, ok := errors.AsType[form.Faults](err)
	if !ok {
		t.Fatalf("not faults but %v", err)
	}
	for _, f := range fs {
		if f.Mend == "" || strings.Contains(f.Message, "drawn") || strings.Contains(f.Message, "do not fit") || strings.Contains(f.Message, "{") {
			t.Errorf("%v", f)
		}
	}
}

// pointed reports whether an edge of a piece comes to a point that is meant, or is
// sewn to one that does.
func pointed(m *templates.Made, name, edge string) bool {
	return slices.ContainsFunc(m.Treatments, func(x templates.Treatment) bool {
		return x.Point && slices.Contains(slices.Concat(x.Along, x.Fits), templates.ChainPart{Piece: name, Edge: edge})
	})
}

func checkLaws(t fataler, m *templates.Made) {
	for i := range m.Pieces {
		p := &m.Pieces[i]
		checkCut(t, m, p)
		for _, e := range p.Edges {
			if want := 0.0; e.Name == p.FoldEdge { // the grain runs along the fold, or aslant
				if p.Bias {
					want = 45
				}
				near(t, fmt.Sprintf("%s: its fold off the grain", p.Name), e.Bias, want, 0.01)
			}
			if e.Use == "" {
				t.Errorf("nothing becomes of %s.%s", p.Name, e.Name)
			}
		}
		for _, c := range p.Corners {
			// a curve that starts aslant on the fold makes a point when opened out
			switch {
			case c.Before != p.FoldEdge && c.After != p.FoldEdge:
			case c.Inside > 95 && (pointed(m, p.Name, c.Before) || pointed(m, p.Name, c.After)): // as the front of a V neck should
				if c.Inside < 110 || c.Inside > 170 {
					t.Errorf("%s: %s and %s come to a point of %.0f degrees at the fold", p.Name, c.Before, c.After, c.Inside)
				}
			default:
				near(t, fmt.Sprintf("%s: %s and %s at the fold", p.Name, c.Before, c.After), c.Inside, 90, 0.2)
			}
		}
		if p.FoldEdge != "" {
			whole, err := p.Outline.Unfold(p.FoldEdge, func(s string) string { return s + "_2" })
			if err != nil {
				t.Fatalf("%v", err)
			}
			near(t, p.Name+" opened out", whole.Area(), 2*p.Outline.Area(), 1e-3)
		}
	}
	for _, j := range m.Joins {
		near(t, "join "+j.Name, float64(j.LengthA-j.Eased), float64(j.LengthB), 0.5)
	}
	for _, x := range m.Treatments {
		if x.Kind == "hem" || x.Kind == "casing" {
			// a point in a hem cannot be turned up
			if x.TightestRadius < 100 {
				t.Errorf("%s bends to %.0f mm", x.Name, x.TightestRadius)
			}
			continue
		}
		tightest := float64(x.TightestRadius)
		if x.Point { // that is snipped and mitred; beside it the edge bends no more than others
			for _, c := range x.Along {
				if r := edge(t, m, c.Piece, c.Edge).LeastRadius(); tightest == 0 || r < tightest {
					tightest = r
				}
			}
		}
		if tightest < 38 {
			t.Errorf("%s bends to %.0f mm, too tight to bind or band", x.Name, tightest)
		}
	}
	checkDarts(t, m)
	switch m.Garment.Name {
	case "shell-top":
		checkTop(t, m)
	case "pull-on-skirt":
		checkSkirt(t, m)
	case "open-jacket":
		checkJacket(t, m)
	}
}

// checkCut: the piece can be cut with usual allowances.
func checkCut(t fataler, m *templates.Made, p *templates.Piece) {
	allowances := make([]outline.Allowance, len(p.Edges))
	for i, e := range p.Edges {
		a := outline.Allowance{Width: 15}
		switch kind, name, _ := strings.Cut(e.Use, " "); kind {
		case "fold":
			a = outline.Allowance{Manner: outline.Folded}
		case "edge":
			switch x := treatment(t, m, name); x.Kind {
			case "hem":
				a = outline.Allowance{Width: max(float64(x.Depth), 25) + 6, Manner: outline.Turned}
			case "casing":
				a = outline.Allowance{Width: float64(x.Elastic) + 12, Manner: outline.Turned}
			case "binding":
				a.Width = 6
			}
		}
		allowances[i] = a
	}
	cut, err := p.Outline.Cut(allowances)
	if err != nil {
		t.Fatalf("%s: %v", p.Name, err)
	}
	if cut.Area() <= p.Outline.Area() {
		t.Errorf("%s: the cut line lies within the net line", p.Name)
	}
}

// checkDarts: sewn shut, a dart leaves the seam straight, and its pressed fold
// lies with its raw edge along the seam.
func checkDarts(t fataler, m *templates.Made) {
	for _, d := range m.Details {
		if d.Kind != "dart" {
			continue
		}
		near(t, d.Name+": legs", d.Point.Distance(d.Ends[0]), d.Point.Distance(d.Ends[1]), 0.01)
		// the way the seam runs from an end of the mouth
		away := func(i int) outline.Point {
			e := edge(t, m, d.Piece, d.Between[i])
			if e.From().Distance(d.Ends[i]) < 0.01 {
				_, tangent := e.At(0)
				return tangent
			}
			_, tangent := e.At(e.Length())
			return tangent.Scale(-1)
		}
		above, below := away(0), away(1).Scale(-1)
		turn := func(v, w outline.Point) float64 {
			return math.Atan2(v.X*w.Y-v.Y*w.X, v.X*w.X+v.Y*w.Y) * 180 / math.Pi
		}
		open := turn(d.Ends[1].Sub(d.Point), d.Ends[0].Sub(d.Point))
		near(t, d.Name+": the seam runs on straight", turn(below, above), open, 0.01)
		folded := d.Fold.Reflect(d.Point, d.Ends[1])
		off := folded.Sub(d.Ends[1])
		near(t, d.Name+": the fold lies on the seam", math.Abs(turn(off, below.Scale(-1))), 0, 0.01)
		if l := float64(d.Length); l < 70 {
			t.Errorf("%s is only %.0f mm long", d.Name, l)
		}
		if math.Abs(open) > 20 {
			t.Errorf("%s opens %.0f degrees, too blunt to press to a point", d.Name, open)
		}
	}
}

func TestMakeIsTheSameEveryTime(t *testing.T) {
	for _, name := range templates.Names() {
		a, b := makeIt(t, name, nil, nil), makeIt(t, name, nil, nil)
		same := cmp.Options{
			cmpopts.IgnoreFields(templates.Made{}, "Garment"),
			cmp.AllowUnexported(outline.Segment{}),
		}
		if diff := cmp.Diff(a, b, same); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func ExampleGarment_Make() {
	g, err := templates.Load("shell-top")
	if err != nil {
		fmt.Println(err)
		return
	}
	made, err := g.Make(pairs("bust", "92 cm", "hip", "98 cm"), pairs("length", "62 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, j := range made.Joins {
		fmt.Printf("%s: %.1f and %.1f mm, %d times\n", j.Title, j.LengthA, j.LengthB, j.Copies)
	}
	// Output:
	// shoulder seam: 70.9 and 70.9 mm, 2 times
	// side seam: 426.0 and 426.0 mm, 2 times
}

func BenchmarkMake(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run(name, func(b *testing.B) {
			g, err := templates.Load(name)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := g.Make(nil, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLoad(b *testing.B) {
	for _, name := range templates.Names() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := templates.Load(name); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkShelf makes every garment of the shelf once.
func BenchmarkShelf(b *testing.B) {
	var all []*templates.Garment
	for _, name := range templates.Names() {
		all = append(all, load(b, name))
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, g := range all {
			if _, err := g.Make(nil, nil); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkThousandSizes makes one garment in a thousand sizes drawn at random from
// human shapes, the same every time; before the clock runs all of them are made once
// and every law looked at. No size is refused.
func BenchmarkThousandSizes(b *testing.B) {
	g := load(b, "shirt-blouse")
	r := rand.New(rand.NewPCG(1, 2))
	sizes := make([]form.Pairs[form.Text], 1000)
	for k := range sizes {
		cm := map[string]float64{}
		for _, name := range hipsFirst(g) {
			least, most, ok := human(name, g.Loose, cm)
			if !ok {
				continue
			}
			m, _ := g.Measures.Get(name)
			least, most = max(least, float64(m.Least)/10), min(most, float64(m.Most)/10)
			cm[name] = math.Round(10*(least+r.Float64()*(most-least))) / 10
			sizes[k] = append(sizes[k], pairs(name, fmt.Sprintf("%.1f cm", cm[name]))...)
		}
		m, err := g.Make(sizes[k], nil)
		if err != nil {
			b.Fatalf("%v: %v", cm, err)
		}
		checkLaws(b, m)
	}
	for b.Loop() {
		for _, size := range sizes {
			if _, err := g.Make(size, nil); err != nil {
				b.Fatal(err)
			}
		}
	}
}

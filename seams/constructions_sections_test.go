package seams_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
)

// Words: every pass says what to do and how it looks when right, every name in
// braces is filled, and no measure stands as a bare figure, which would be read
// in the wrong units.
func TestWordsOfPasses(t *testing.T) {
	s := load(t)
	brace := regexp.MustCompile(`\{([^}]*)\}`)
	titles := []string{"a", "b", "edge", "strip", "tape_name", "caught", "ratio"}
	for i := range s.Constructions {
		c := &s.Constructions[i]
		sized, err := c.Measure(plainFacts(t, s, "cotton-lawn"))
		if err != nil {
			t.Error(err)
			continue
		}
		for k, p := range c.Passes {
			if p.Text == "" || p.Good == "" {
				t.Errorf("%s: pass %d lacks words", c.Name, k+1)
			}
			for _, words := range []string{p.Text, p.Good} {
				for _, m := range brace.FindAllStringSubmatch(words, -1) {
					_, size := sized.Size(m[1])
					title := slices.Contains(titles, m[1])
					if size == title {
						t.Errorf("%s: pass %d: {%s} is filled by a size: %v, by a title: %v", c.Name, k+1, m[1], size, title)
					}
					if c.For == "edge" && (m[1] == "a" || m[1] == "b") {
						t.Errorf("%s: pass %d: an edge has no second piece {%s}", c.Name, k+1, m[1])
					}
				}
				bare := brace.ReplaceAllString(words, "")
				if strings.ContainsAny(bare, "0123456789{}") {
					t.Errorf("%s: pass %d has a bare figure: %s", c.Name, k+1, words)
				}
				if !strings.HasSuffix(words, ".") {
					t.Errorf("%s: pass %d does not end in a full stop: %s", c.Name, k+1, words)
				}
			}
		}
		for _, rules := range [][]seams.Rule{c.RuledOut, c.SpeaksFor, c.SpeaksAgainst} {
			for _, r := range rules {
				if strings.HasSuffix(r.Because, ".") || strings.ToLower(r.Because[:1]) != r.Because[:1] && !strings.HasPrefix(r.Because, "I") {
					t.Errorf("%s: a reason starts small and has no full stop: %s", c.Name, r.Because)
				}
			}
		}
	}
}

func plainFacts(t testing.TB, s *seams.Shelf, cloth string) seams.Facts {
	t.Helper()
	f := clothFacts(t, s, cloth)
	line := seams.LineFacts{Length: 1000, TightestRadius: straight, Elastic: 25, Grip: 700}
	return seams.Facts{Cloth: f, Applied: f, Join: line, Edge: line,
		Workroom: roomOf(t, "everything").facts(s, "", nil)}
}

// Sections: drawn to scale, finite, within the paper, every stitch through
// cloth, and no ply folded back on the line it came from.
func TestSectionsAreToScale(t *testing.T) {
	s := everyCloth(t)
	cloths := sampled(s.Cloths)
	t.Logf("sections in %d of %d cloths", len(cloths), len(s.Cloths))
	for i := range s.Constructions {
		c := &s.Constructions[i]
		if c.Kind != "strip" && len(c.Figure) == 0 {
			t.Errorf("%s has no section", c.Name)
		}
		for _, cloth := range cloths {
			sized, err := c.Measure(plainFacts(t, s, cloth.Name))
			if err != nil {
				t.Error(err)
				continue
			}
			section(t, c.Name+" in "+cloth.Name, sized.Figure)
			for _, s := range sized.Stages {
				section(t, fmt.Sprintf("%s in %s, passes %d to %d", c.Name, cloth.Name, s.From, s.After), s.Figure)
			}
			outside(t, c.Name+" in "+cloth.Name, sized.Figure)
		}
	}
}

func section(t *testing.T, title string, figure []seams.Drawn) {
	t.Helper()
	var plies [][][2]float64
	for _, d := range figure {
		for _, p := range d.Through {
			if math.IsNaN(p[0]) || math.Abs(p[0]) > 200 || math.IsNaN(p[1]) || p[1] < -2 || p[1] > 10 {
				t.Errorf("%s: a point at %v", title, p)
			}
		}
		if d.Item.Ply != "" {
			plies = append(plies, d.Through)
		}
		if d.Item.Size != "" {
			if across := math.Abs(d.Through[1][0] - d.Through[0][0]); math.Abs(across-d.MM) > 1e-9 || d.Through[0][1] != d.Through[1][1] {
				t.Errorf("%s: %s is drawn %.3f mm wide and is %.3f", title, d.Item.Size, across, d.MM)
			}
		}
	}
	for _, ply := range plies {
		for k := 2; k < len(ply); k++ {
			if ply[k] == ply[k-1] || ply[k] == ply[k-2] {
				t.Errorf("%s: a ply goes back over itself at %v", title, ply[k])
			}
		}
	}
	for _, d := range figure {
		if d.Item.Stitch != "" && !slices.ContainsFunc(plies, func(ply [][2]float64) bool { return crosses(ply, d.Through) }) {
			t.Errorf("%s: stitch %s at %v goes through no cloth", title, d.Item.Stitch, d.Through)
		}
	}
}

// outside: the ply on top of a section, which is the outside of the garment,
// shows its right side.
func outside(t *testing.T, title string, figure []seams.Drawn) {
	t.Helper()
	top := math.Inf(1)
	for _, d := range figure {
		if d.Item.Ply != "" {
			for _, p := range d.Through {
				top = min(top, p[1])
			}
		}
	}
	for _, d := range figure {
		for k := 1; k < len(d.Through) && d.Item.Right != ""; k++ {
			a, b := d.Through[k-1], d.Through[k]
			if a[1] != top || b[1] != top {
				continue
			}
			if right := map[bool]string{true: "left", false: "right"}[b[0] > a[0]]; d.Item.Right != right {
				t.Errorf("%s: ply %s shows its wrong side outside, from %v to %v", title, d.Item.Ply, a, b)
			}
		}
	}
}

// crosses reports whether a stitch and a ply meet.
func crosses(ply, stitch [][2]float64) bool {
	side := func(a, b, p [2]float64) float64 { return (b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0]) }
	for k := 1; k < len(ply); k++ {
		a, b, p, q := ply[k-1], ply[k], stitch[0], stitch[1]
		if side(a, b, p)*side(a, b, q) <= 0 && side(p, q, a)*side(p, q, b) <= 0 {
			return true
		}
	}
	return false
}

// Files say their units and name the house figures that their formulas read.
func TestHouseFiguresAreListed(t *testing.T) {
	figure := regexp.MustCompile(`workroom\.house\('([a-z_]+)'`)
	for name, text := range constructionFiles(t) {
		head, body, _ := strings.Cut(text, "\n- construction: ")
		if !strings.Contains(head, "every length is in mm") {
			t.Errorf("%s does not tell its units", name)
		}
		for _, m := range figure.FindAllStringSubmatch(body, -1) {
			if !strings.Contains(head, "#   "+m[1]+":") {
				t.Errorf("%s reads the house figure %s and does not list it", name, m[1])
			}
		}
		for _, line := range strings.Split(head, "\n") {
			listed, _, ok := strings.Cut(strings.TrimPrefix(line, "#   "), ":")
			if ok && strings.HasPrefix(line, "#   ") && strings.Trim(listed, "abcdefghijklmnopqrstuvwxyz_") == "" && !strings.Contains(body, "house('"+listed+"'") {
				t.Errorf("%s lists the house figure %s and does not read it", name, listed)
			}
		}
	}
}

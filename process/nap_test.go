package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
)

// In a cloth with a direction all pieces lie the same way up but for what is worn
// turned down; in another it does not matter. Strips of a knit are cut across it,
// where it gives most. Common practice, no source.
func TestWhichWayUp(t *testing.T) {
	for _, x := range []struct {
		garment, cloth string
		turned         []string
		strips         string
	}{
		{"shirt-blouse", "velvet", []string{"collar-fall", "collar-under"}, ""},
		{"shirt-blouse", "cotton-poplin", nil, ""},
		{"a-line-skirt", "velvet", nil, ""},
		{"knit-tee", "cotton-jersey", nil, "across"},
	} {
		p := plan(t, jobFor(garmentOf(t, x.garment), x.cloth, x.cloth), rooms()[0], loadShelf(t))
		var turned []string
		for _, q := range p.Pieces {
			if q.Turned {
				turned = append(turned, q.Name)
			}
		}
		if slices.Sort(turned); !slices.Equal(turned, x.turned) {
			t.Errorf("%s in %s: turned %v, want %v", x.garment, x.cloth, turned, x.turned)
		}
		cut := p.Operations[slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == "cut.main" })].Text
		if strings.Contains(cut, "turned down") != (x.turned != nil) {
			t.Errorf("%s in %s: %s", x.garment, x.cloth, cut)
		}
		for _, s := range p.Strips {
			if x.strips != "" && s.On != x.strips {
				t.Errorf("%s: the %s is cut %s", x.garment, s.Title, s.On)
			}
		}
	}
}

package sheets

import (
	"fmt"
	"testing"

	"bodkin/process"
	"bodkin/seams"
)

// Every construction of the shelf, in every cloth, has a section that can be
// drawn: to scale, within the sheet, with no words over others.
func TestEveryConstructionCanBeDrawn(t *testing.T) {
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	room := seams.WorkroomFacts{
		Forms: func(string) bool { return true },
		House: func(_ string, otherwise float64) float64 { return otherwise },
		Iron:  true, Steam: true,
	}
	measure, tried := &measurer{}, map[string]bool{}
	for i := range shelf.Constructions {
		con := &shelf.Constructions[i]
		if con.Kind == "strip" {
			continue // a strip that is made ready has nothing to be cut across
		}
		for _, cloth := range shelf.Cloths {
			line := seams.LineFacts{Length: 500, TightestRadius: 1e6, Depth: 40, Elastic: 20, Grip: 700}
			sized, err := con.Measure(seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Join: line, Edge: line, Workroom: room})
			if err != nil {
				t.Errorf("%s in %s: %v", con.Name, cloth.Name, err)
				continue
			}
			s := process.Seam{Kind: con.Kind, Construction: con.Name, ConstructionTitle: con.Title, Section: process.SectionOf(shelf, sized)}
			// Cloths that ask for the same sizes give one drawing, which is tried once.
			key := fmt.Sprintf("%s %+v", con.Name, s.Section)
			if tried[key] {
				continue
			}
			tried[key] = true
			c := newComposer(&process.Plan{Seams: []process.Seam{s}}, Options{FiguresAt: "f/"})
			c.measure = measure // reading the typeface once is enough
			c.sectionFigure(s)
			if len(c.drawings) != len(s.Section.Stages)+1 {
				t.Errorf("%s in %s has %d drawings and %d stages before the finished one", con.Name, cloth.Name, len(c.drawings), len(s.Section.Stages))
				continue
			}
			for _, d := range c.drawings {
				d.Address += " of " + con.Name + " in " + cloth.Name
				wellFormed(t, d)
				apart(t, d, measure)
				if d.Figure.Width > sectionWide+12 || d.Figure.Height > 80 {
					t.Errorf("%s is %.0f by %.0f mm", d.Address, d.Figure.Width, d.Figure.Height)
				}
			}
		}
	}
}

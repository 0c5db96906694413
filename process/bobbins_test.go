package process_test

import (
	"math"
	"testing"

	"bodkin/templates"
)

// The bobbins wound hold what is sewn from them and not one too many, and each
// comes to its end at its own machine in its own colour.
func TestBobbins(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("open-jacket")
	if err != nil {
		t.Fatal(err)
	}
	room := rooms()[0]
	room.Minutes.Wind = text("0.5")
	if p := plan(t, jobFor(g, "cotton-lawn", "cotton-poplin"), room, shelf); p.Totals.WindMinutes <= 0 || p.Totals.WindMinutes != 0.5*float64(p.Bobbins[0].Wind+p.Bobbins[1].Wind) {
		t.Errorf("at half a minute each %g minutes of winding", p.Totals.WindMinutes)
	}
	for _, quantity := range []string{"1", "12"} {
		j := jobFor(g, "cotton-lawn", "cotton-poplin")
		j.Quantity = text(quantity)
		p := plan(t, j, rooms()[0], shelf)
		if len(p.Bobbins) != 2 {
			t.Errorf("%d uses of bobbins, want one for each colour", len(p.Bobbins))
		}
		winding := 0.0
		for _, u := range p.Bobbins {
			winding += float64(u.Wind)
			if u.Minutes != float64(u.Wind) { // a minute each: an estimate, no source
				t.Errorf("%d bobbins of %s are wound in %g minutes", u.Wind, u.Colour, u.Minutes)
			}
			if want := int(math.Ceil(u.Metres / u.Holds)); u.Wind != max(want, 1) || len(u.RunsOut) != u.Wind-1 {
				t.Errorf("%s garments, %.1f m of %s: %d wound, %d run out, want %d wound", quantity, u.Metres, u.Colour, u.Wind, len(u.RunsOut), want)
			}
			step := 0
			for _, r := range u.RunsOut {
				if r.Step < step {
					t.Errorf("%s runs out in step %d after step %d", u.Colour, r.Step, step)
				}
				step = r.Step
				for _, o := range p.Operations {
					if o.ID == r.Operation && (o.Station != u.Station || o.Setting.Bobbin != u.Colour) {
						t.Errorf("%s runs out in %s, which has %s below", u.Colour, o.ID, o.Setting.Bobbin)
					}
				}
			}
			if quantity == "12" && u.Metres > u.Holds && len(u.RunsOut) == 0 {
				t.Errorf("%.1f m of %s from one bobbin of %.0f m", u.Metres, u.Colour, u.Holds)
			}
		}
		if p.Totals.WindMinutes != winding {
			t.Errorf("%g minutes of winding in the totals, want %g", p.Totals.WindMinutes, winding)
		}
	}
}

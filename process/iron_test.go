package process_test

import (
	"math"
	"strconv"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// An iron heats in a minute a dot and cools in five: the plan pays just that for
// each change of heat, and no plan made for an iron that cools quickly and heats
// slowly would be cheaper here. Both are replayed by the tests' own arithmetic.
func TestIronHeatsQuicklyAndCoolsSlowly(t *testing.T) {
	shelf := loadShelf(t)
	turned := 0
	for _, name := range []string{"shell-top", "open-jacket"} {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "cotton-lawn", "silk-satin")
		room := func(hotter, cooler float64) *process.Workroom {
			w := roomOf("steam", "straight-stitcher")
			w.Minutes.Hotter, w.Minutes.Cooler = text(strconv.Itoa(int(hotter))), text(strconv.Itoa(int(cooler)))
			return w
		}
		slow, quick := plan(t, j, room(1, 5), shelf), plan(t, j, room(5, 1), shelf)
		for _, p := range []*process.Plan{slow, quick} {
			checkOrder(t, p)
			if !p.Order.Proved {
				t.Fatalf("%s: not proved", name)
			}
		}
		told, rises, falls := 0.0, 0, 0
		for _, c := range slow.Changes {
			if c.What != "heat" {
				continue
			}
			from, _ := strconv.Atoi(c.From) // 0 when cold
			to, err := strconv.Atoi(c.To)
			if err != nil {
				t.Fatal(err)
			}
			want := float64(to - from)
			if to < from {
				want = 5 * float64(from-to)
				falls++
			} else {
				rises++
			}
			if math.Abs(c.Minutes-want) > 1e-9 {
				t.Errorf("%s: from %s to %s dots takes %v minutes, want %v", name, c.From, c.To, c.Minutes, want)
			}
			told += c.Minutes
		}
		if got := ironing(slow, 1, 5); math.Abs(got-told) > 1e-9 {
			t.Errorf("%s: replayed, the iron takes %v minutes, the plan tells %v", name, got, told)
		}
		if rises > 1 || falls > 0 {
			turned++
		}
		other := quick.Order.ChangeMinutes - ironing(quick, 5, 1) + ironing(quick, 1, 5)
		if slow.Order.ChangeMinutes > other+1e-9 {
			t.Errorf("%s: %.2f minutes of change, in the order for the other iron %.2f", name, slow.Order.ChangeMinutes, other)
		}
		other = slow.Order.ChangeMinutes - ironing(slow, 1, 5) + ironing(slow, 5, 1)
		if quick.Order.ChangeMinutes > other+1e-9 {
			t.Errorf("%s: %.2f minutes of change with the other iron, in this order %.2f", name, quick.Order.ChangeMinutes, other)
		}
	}
	if turned == 0 {
		t.Error("no garment changes the heat of its iron")
	}
}

// ironing is what changing the heat takes along the plan's operations, from cold.
func ironing(p *process.Plan, hotter, cooler float64) float64 {
	sum, heat := 0.0, 0
	for _, o := range p.Operations {
		if o.Station != "iron" || o.Setting.HeatDots == 0 {
			continue
		}
		if d := o.Setting.HeatDots - heat; d > 0 {
			sum += hotter * float64(d)
		} else {
			sum -= cooler * float64(d)
		}
		heat = o.Setting.HeatDots
	}
	return sum
}

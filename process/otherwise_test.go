package process_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// What an experienced maker would say: an overlocker joins and neatens lawn in
// one pass; sheer cloth is sewn French with or without one; neat work in linen
// is French, strong work felled. Complex Seams for Woven Fabrics, Oregon State
// Univ. Extension; the rest common practice, no source.
func TestWhatIf(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		cloth, seam string
		room        *process.Workroom
		when, then  string // empty then: nothing of the sort changes it
	}{
		{"cotton-lawn", "side", rooms()[0], "with a three-thread overlocker", "plain-together-overlocked"},
		{"linen-medium", "side", rooms()[0], "with a zigzag machine", "plain-open-zigzagged"},
		{"linen-medium", "side", rooms()[0], "if strong work were favoured", "flat-felled"},
		{"linen-medium", "side", rooms()[0], "if neat work were favoured", "french"},
		{"linen-medium", "side", rooms()[0], "if the cloth were see-through", "french"},
		{"cotton-lawn", "side", rooms()[0], "with a lining over it", "plain-open-pinked"},
		{"silk-georgette", "side", rooms()[0], "with a", ""},
		{"cotton-lawn", "side", rooms()[5], "with a steam iron", "french"},
	} {
		g := garmentOf(t, "pull-on-skirt")
		in := process.Input{Job: jobFor(g, tt.cloth, "cotton-lawn"), Garment: g, Workroom: tt.room, Shelf: shelf}
		found, err := process.WhatIf(in, tt.seam)
		if err != nil {
			t.Fatal(err)
		}
		k := slices.IndexFunc(found, func(f process.Otherwise) bool { return strings.HasPrefix(f.If, tt.when) })
		switch {
		case tt.then == "" && k >= 0 || tt.then != "" && k < 0:
			t.Errorf("%s of %s, %s: %+v", tt.seam, tt.cloth, tt.when, found)
		case k >= 0 && found[k].Construction != tt.then:
			t.Errorf("%s of %s, %s: %+v", tt.seam, tt.cloth, tt.when, found[k])
		}
	}
}

// The minutes told are those of two plans, and what is told comes true.
func TestWhatIfComesTrue(t *testing.T) {
	shelf := loadShelf(t)
	for _, cloth := range []string{"cotton-lawn", "linen-medium", "cotton-jersey"} {
		g := garmentOf(t, "pull-on-skirt")
		in := process.Input{Job: jobFor(g, cloth, "cotton-lawn"), Garment: g, Workroom: rooms()[0], Shelf: shelf}
		now := seamOf(t, chosen(t, shelf, in.Job, in.Workroom), "side")
		found, err := process.WhatIf(in, "side")
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: %v, %v", cloth, found, err)
		}
		for _, f := range found {
			job, room := *in.Job, *in.Workroom
			title, machine := strings.CutPrefix(f.If, "with a")
			k := slices.IndexFunc(shelf.Machines, func(m seams.Machine) bool {
				return machine && strings.EqualFold(m.Title, strings.TrimSpace(strings.TrimPrefix(title, "n ")))
			})
			favour, wish := strings.CutPrefix(f.If, "if ")
			favour, wished := strings.CutSuffix(favour, " work were favoured")
			switch {
			case k >= 0:
				room.Machines = append(slices.Clone(room.Machines), process.RoomMachine{Is: text(shelf.Machines[k].Name)})
			case wish && wished:
				job.Favour = text(favour)
			default:
				continue
			}
			then := seamOf(t, chosen(t, shelf, &job, &room), "side")
			if then.Construction != f.Construction || math.Abs(then.Minutes-now.Minutes-f.Minutes) > 1e-6 {
				t.Errorf("%s, %s: told %s, %+.2f minutes; the plan has %s, %+.2f", cloth, f.If, f.Construction, f.Minutes,
					then.Construction, then.Minutes-now.Minutes)
			}
		}
	}
}

// What is insisted on is not second-guessed, and an unknown name changes nothing.
func TestWhatIfInsisted(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("pull-on-skirt")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "cotton-lawn", "cotton-lawn")
	j.Seams = form.Pairs[form.Text]{pair("side", "mock-french")}
	in := process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}
	for _, name := range []string{"side", "nosuch"} {
		if found, err := process.WhatIf(in, name); err != nil || len(found) > 0 {
			t.Errorf("%s: %v, %v", name, found, err)
		}
	}
}

func TestMinutesWords(t *testing.T) {
	for minutes, want := range map[float64]string{
		0.1: "as long", -0.5: "half a minute less", 1: "1 minute more", -1.5: "1½ minutes less", -9.2: "9 minutes less", 12.4: "12 minutes more",
	} {
		if got := (process.Otherwise{Minutes: minutes}).MinutesWords(); got != want {
			t.Errorf("%v: %q, want %q", minutes, got, want)
		}
	}
}

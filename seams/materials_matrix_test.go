package seams_test

import (
	"slices"
	"testing"

	"bodkin/seams"
)

// Every cloth in every room, and what is ironed on or sewn in: there is a way to
// press it and something to steady it with; nothing is hotter than the cloth
// bears or the iron gives, nothing ruled out is taken; and no rule of an
// interfacing, a tape or a pressing is dead or holds always.
func TestMaterialsInEveryRoom(t *testing.T) {
	s := everyCloth(t)
	type tally struct{ asked, held int }
	rules := map[string]*tally{}
	count := func(what string, all []seams.Rule, because []string) {
		for _, r := range all {
			key := what + ": " + r.Because
			if rules[key] == nil {
				rules[key] = &tally{}
			}
			rules[key].asked++
			if slices.Contains(because, r.Because) {
				rules[key].held++
			}
		}
	}
	combinations := 0
	parts := []string{"", "band", "buttonhole", "collar", "cuff", "facing", "hem", "placket", "pocket-mouth", "stand", "waistband"}
	for _, cloth := range s.Cloths {
		for _, r := range rooms() {
			for _, favour := range []string{"", "quick"} {
				combinations++
				facts := seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Workroom: r.facts(s, favour, nil)}
				title := cloth.Name + ", " + r.title
				most := 0 // dots that cloth and room allow
				if r.iron {
					if most = cloth.HeatDots; r.dots > 0 {
						most = min(most, r.dots)
					}
				}
				p, err := s.PressingFor(facts)
				if err != nil || p.Dots != most || p.Text == "" || p.Good == "" || p.Steam && (!cloth.Steam || most == 0) {
					t.Errorf("%s is pressed as %+v, %v; want %d dots", title, p, err, most)
				}
				if favour == "" {
					facts.Part.Name = parts[combinations/2%len(parts)] // each cloth meets several, each part most cloths
				}
				pieces, err := s.WeighInterfacings(facts)
				if err != nil {
					t.Fatal(err)
				}
				tapes, err := s.WeighTapes(facts)
				if err != nil {
					t.Fatal(err)
				}
				if !pieces[0].Allowed() {
					t.Errorf("%s: nothing steadies it: %v", title, pieces[0].RuledOut)
				}
				for _, v := range slices.Concat(pieces, tapes) {
					in := v.Interfacing
					if v.Allowed() && (in.HeatDots > most || in.Attach == "" || in.Trim == "") {
						t.Errorf("%s: %s wants %d dots, and %d are allowed", title, in.Name, in.HeatDots, most)
					}
					count(in.Name+" ruled out", in.RuledOut, v.RuledOut)
					var speaks []string
					for _, reason := range v.For {
						speaks = append(speaks, reason.Because)
					}
					count(in.Name+" for", in.SpeaksFor, speaks)
				}
			}
		}
	}
	t.Logf("%d combinations of %d cloths, %d rooms and what is favoured", combinations, len(s.Cloths), len(rooms()))
	for key, n := range rules {
		if n.held == 0 || n.held == n.asked {
			t.Errorf("%s: held %d of %d times", key, n.held, n.asked)
		}
	}
}

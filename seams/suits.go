package seams

import (
	"slices"

	"bodkin/seams/formula"
)

// Suits reports whether a construction can be sewn in a cloth on some line of a
// garment or other: whether there is a line, of those that garments have, for
// which none of its rules excludes it. Machines and iron are taken to be there.
// The error is a [form.Fault] in a rule.
func (s *Shelf) Suits(construction string, cloth Cloth) (bool, error) {
	c, err := s.Construction(construction)
	if err != nil {
		return false, err
	}
	everything := func(string) bool { return true }
	for _, line := range lines() {
		facts := Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(), Join: line, Edge: line,
			Workroom: WorkroomFacts{Forms: everything, Iron: true, Steam: true}}
		v, err := s.judge(c, facts.usable(), formula.ValuesOf(facts.usable()))
		if err != nil {
			return false, err
		}
		if v.Allowed() {
			return true, nil
		}
	}
	return false, nil
}

// lines are lines of every sort that garments have: straight and curved,
// strained, eased, gathered, closed, hollow, deep and shallow, with elastic.
func lines() []LineFacts {
	const straight = 1e6
	return []LineFacts{
		{Length: 600, TightestRadius: straight},
		{Length: 600, TightestRadius: straight, Strain: 2, InsideSeen: true},
		{Length: 400, TightestRadius: straight, Strain: 3},
		{Length: 650, TightestRadius: 70, Turning: 120, Curved: true, Strain: 3},
		{Length: 130, TightestRadius: straight, Strain: 1, Eased: 4},
		{Length: 450, TightestRadius: 60, Turning: 250, Curved: true, Eased: 22},
		{Length: 500, TightestRadius: straight, Eased: 25},
		{Length: 900, TightestRadius: straight, Eased: 400},
		{Length: 380, TightestRadius: 25, Turning: 150, Curved: true},
		{Length: 450, TightestRadius: 60, Turning: 200, Curved: true, Hollow: true, Closed: true},
		{Length: 4800, TightestRadius: 760, Turning: 360, Fullness: 251},
		{Length: 1200, TightestRadius: straight, Depth: 3},
		{Length: 1200, TightestRadius: straight, Depth: 8},
		{Length: 1200, TightestRadius: straight, Depth: 50, Fullness: 20},
		{Length: 508, TightestRadius: straight, Closed: true, Depth: 63, OtherCloth: true},
		{Length: 1000, TightestRadius: straight, Closed: true, Elastic: 25, Grip: 700},
	}
}

// SortsOfCloth are the words for cloths of one sort, in their order: [OfSort]
// tells which cloth is of it.
func SortsOfCloth() []string { return []string{"sheer", "knit", "woven", "pile", "lace", "coated"} }

// OfSort reports whether the cloth is sheer, knit, woven, pile, lace or coated;
// no cloth is of another sort.
func (c Cloth) OfSort(sort string) bool {
	f := c.Facts()
	is := []bool{f.Sheer, f.Knit, f.Woven, f.Pile, f.Lace, f.Coated}
	k := slices.Index(SortsOfCloth(), sort)
	return k >= 0 && is[k]
}

// SuitsSort reports whether a construction suits most cloths of a sort, as
// [Shelf.Suits] does one cloth.
func (s *Shelf) SuitsSort(construction, sort string) (bool, error) {
	suits, all := 0, 0
	for _, c := range s.Cloths {
		if !c.OfSort(sort) {
			continue
		}
		all++
		ok, err := s.Suits(construction, c)
		if err != nil {
			return false, err
		}
		if ok {
			suits++
		}
	}
	return 2*suits > all, nil
}

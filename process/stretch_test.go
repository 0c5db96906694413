package process_test

import (
	"slices"
	"testing"

	"bodkin/process"
	"bodkin/seams"
)

// A seam is chosen by what the knit gives along it. Cotton jersey gives 45 per cent
// across and 15 along (the shelf's own estimate): down the side, where it gives
// little, a straight row with a zigzag beside it holds; a seam with the greatest
// stretch along it is one that gives. Only the direction differs.
func TestStretchAlongTheSeam(t *testing.T) {
	shelf := loadShelf(t)
	p := plan(t, jobFor(garmentOf(t, "knit-tee"), "cotton-jersey", "cotton-jersey"), roomOf("steam", "zigzag-machine"), shelf)
	k := slices.IndexFunc(p.Seams, func(s process.Seam) bool { return s.Name == "side" })
	if s := p.Seams[k]; s.Construction != "straight-and-zigzag" {
		t.Errorf("the side seam is a %s (%g, %v)", s.Construction, s.Score, s.Because)
	}
	cloth, err := shelf.Cloth("cotton-jersey")
	if err != nil {
		t.Fatal(err)
	}
	for stretch, want := range map[float64]string{15: "straight-and-zigzag", 45: "narrow-zigzag", 0: "narrow-zigzag"} { // 0: not told, so it may be the greatest
		verdicts, err := shelf.Weigh("join", "seam", seams.Facts{Cloth: cloth.Facts(), Applied: cloth.Facts(),
			Join:     seams.LineFacts{Length: 400, TightestRadius: 1e6, Stretch: stretch},
			Workroom: seams.WorkroomFacts{Iron: true, Forms: func(st string) bool { return st == "301" || st == "304" }}})
		if err != nil || verdicts[0].Construction.Name != want {
			t.Errorf("with %g per cent along it, a seam is a %s, %v; want %s", stretch, verdicts[0].Construction.Name, err, want)
		}
	}
}

package seams_test

import (
	"testing"

	"bodkin/seams"
)

// Threads of which the strength is published: Tex 27 spun, 2.2 lb (a thread
// maker's booklet, p. 33); four densities of 301 in it, unrounded 19.8 to 39.6 lb
// to the inch.
func TestThreadStrength(t *testing.T) {
	s := load(t)
	lockstitch, err := s.Stitch("301")
	if err != nil {
		t.Fatal(err)
	}
	const newtons = 4.4482216
	for perInch, want := range map[float64]float64{6: 19.8, 8: 26.4, 10: 33, 12: 39.6} {
		got, err := lockstitch.SeamStrength(perInch, seams.ThreadStrength(27)/newtons)
		if err != nil || !near(got, want, 1e-9) {
			t.Errorf("%v to the inch: %v lb, %v, want %v", perInch, got, err, want)
		}
	}
	// 15 lbf to the inch is 26.3 N/cm, 30 is 52.5: the definitions of the units.
	for strain, want := range []float64{0, 26.27, 39.40, 52.54} {
		if got := seams.SeamStrengthWanted(strain); !near(got, want, 0.01) {
			t.Errorf("strain %d: %v N/cm, want %v", strain, got, want)
		}
	}
	if seams.SeamStrengthWanted(-1) != 0 || seams.SeamStrengthWanted(9) != seams.SeamStrengthWanted(3) {
		t.Error("a strain beyond the classes")
	}
}

package process_test

import (
	"math"
	"testing"

	"bodkin/templates"
	"bodkin/templates/cutting"
)

// Bias of one cloth and width is added up, and the squares told give it by the
// geometry of both ways of cutting, with what the cloth shrinks by; a square of
// one millimetre less does not. The area rule of a square alone would be too small:
// it counts no joins.
func TestBiasFromSquares(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	p := plan(t, jobFor(g, "cotton-lawn", "cotton-poplin"), rooms()[0], shelf)
	if len(p.Bias) != 1 {
		t.Fatalf("bias %+v", p.Bias)
	}
	y, total := p.Bias[0], 0.0
	for _, s := range p.Strips {
		total += s.CutLength * float64(s.Count)
	}
	poplin, err := shelf.Cloth("cotton-poplin")
	if err != nil {
		t.Fatal(err)
	}
	shrunk := func(side float64) float64 { return side * (1 - poplin.Shrinkage/100) }
	if math.Abs(y.TotalMM-total) > 1e-6 || math.Abs(y.AreaMM2-total*y.WidthMM) > 1e-6 || y.ShrinkPart != poplin.Shrinkage/100 {
		t.Errorf("%+v, the strips are %g mm long in all", y, total)
	}
	if b, err := cutting.BiasFromSquare(shrunk(y.SquareMM), y.WidthMM, y.JoinMM); err != nil || b.Total < total || len(b.Each) < y.Strips {
		t.Errorf("a square of %g mm gives %g mm in %d strips, %v", y.SquareMM, b.Total, len(b.Each), err)
	}
	if b, err := cutting.BiasFromSquare(shrunk(y.SquareMM-2), y.WidthMM, y.JoinMM); err == nil && b.Total >= total {
		t.Errorf("a square of %g mm would do", y.SquareMM-2)
	}
	if long, rounds, err := cutting.ContinuousBias(shrunk(y.RoundMM), y.WidthMM, y.JoinMM); err != nil || long < total-1e-6 || rounds != y.Rounds {
		t.Errorf("a square of %g mm gives %g mm in %d rounds, %v", y.RoundMM, long, rounds, err)
	}
	if rule := cutting.AreaRuleSide(total, y.WidthMM); shrunk(y.SquareMM) <= rule || shrunk(y.RoundMM) <= rule {
		t.Errorf("squares of %g and %g mm, the area rule has %g", y.SquareMM, y.RoundMM, rule)
	}
}

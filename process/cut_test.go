package process

import (
	"math"
	"testing"
)

const inch = 25.4

// The trade's own roundings: 1/8 in = 3 mm, 1/4 = 6, 3/8 = 10, 1/2 = 13,
// 5/8 = 15, 3/4 = 20, 1 = 25 (common practice, no source).
func TestTradeInches(t *testing.T) {
	for mm, eighths := range map[float64]float64{3: 1, 6: 2, 10: 3, 13: 4, 15: 5, 20: 6, 25: 8, 38: 12, 50: 16} {
		if got := tradeInches(mm); math.Abs(got-eighths*inch/8) > 1e-9 {
			t.Errorf("%v mm: got %.4f in, want %.4f", mm, got/inch, eighths/8)
		}
	}
	if got := tradeInches(1.5); got != 1.5 {
		t.Errorf("1.5 mm becomes %v", got)
	}
}

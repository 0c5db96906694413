package process

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const inch = 25.4

func TestJoinStripsFromThePractice(t *testing.T) {
	tests := []struct {
		name, source      string
		cut, cloth, allow float64
		bias              bool
		lengths, joins    int
		eachAtMost        float64
	}{
		{"front and neck band of a 66 in coat in 45 in cloth", "common practice, no source",
			133 * inch, 45 * inch, 0.25 * inch, false, 3, 2, 45 * inch},
		{"half of a 45 in strip is enough for a 20 in sleeve with allowances", "common practice, no source",
			(20 + 2*0.5) * inch, 45 * inch / 2, 0.25 * inch, false, 1, 0, 22.5 * inch},
		{"two edges of 24 in at 1 1/2 fullness, 72 in from 36 in cloth, two strips", "L. I. Baldt, Clothing for Women, 1916 (rule; joins taken as butted)",
			72 * inch, 36 * inch, 0, false, 2, 1, 36 * inch},
		{"a strip as long as the cloth is wide needs no join", "arithmetic", 1140, 1140, 6, false, 1, 0, 1140},
		{"a bias strip lies on the diagonal: 45 in cloth gives 63.6 in", "arithmetic, √2",
			63.6 * inch, 45 * inch, 0.25 * inch, true, 1, 0, 63.7 * inch},
	}
	for _, tt := range tests {
		p := JoinStrips(tt.cut, tt.cloth, tt.allow, tt.bias)
		if p.Lengths != tt.lengths || p.Joins != tt.joins || p.Each > tt.eachAtMost+1e-6 {
			t.Errorf("%s (%s): got %+v, want %d lengths, %d joins, each at most %.1f mm",
				tt.name, tt.source, p, tt.lengths, tt.joins, tt.eachAtMost)
		}
	}
}

// Whatever the measures: the lengths are no longer than the cloth gives, joined
// they make exactly the strip, and one length fewer would not do.
func TestJoinStripsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cut := rapid.Float64Range(50, 20000).Draw(t, "cut")
		cloth := rapid.Float64Range(300, 1600).Draw(t, "cloth")
		allow := rapid.Float64Range(0, 15).Draw(t, "allowance")
		bias := rapid.Bool().Draw(t, "bias")
		p := JoinStrips(cut, cloth, allow, bias)
		if p.Each > p.Longest+1e-6 {
			t.Fatalf("each length %.2f is longer than the cloth gives, %.2f", p.Each, p.Longest)
		}
		if got := float64(p.Lengths)*p.Each - float64(p.Joins)*p.Loss; math.Abs(got-cut) > 1e-6 {
			t.Fatalf("joined the lengths make %.3f, want %.3f", got, cut)
		}
		if n := float64(p.Lengths - 1); n >= 1 && n*p.Longest-(n-1)*p.Loss > cut+1e-6 {
			t.Fatalf("%d lengths would do, planned %d", p.Lengths-1, p.Lengths)
		}
		if p.Joins != p.Lengths-1 {
			t.Fatalf("%d joins for %d lengths", p.Joins, p.Lengths)
		}
	})
}

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

package crew

import (
	"testing"

	"pgregory.net/rapid"
)

// mute is a theory that has nothing to say.
type mute struct{}

func (mute) assigned(lit)  {}
func (mute) next() [][]lit { return nil }

// TestProverAgreesWithAllValues: clauses over plain variables and bounds of
// numbers, and arrows between numbers given some of the variables, decided again
// and again with other literals taken for true, against every value tried.
func TestProverAgreesWithAllValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		s := newProver(mute{})
		plains, numbers := draw("plains", 0, 4), draw("numbers", 1, 4)
		var plain []lit
		for range plains {
			plain = append(plain, s.variable(draw("phase", 0, 1) == 1))
		}
		var lo, hi []int64
		for range numbers {
			a, n := int64(draw("lo", 0, 3)), int64(draw("values", 0, 4))
			s.number(a, a+n, a+int64(draw("first", 0, 4)))
			lo, hi = append(lo, a), append(hi, a+n)
		}
		type choice struct {
			plain  uint
			number []int64
		}
		literal := func() (lit, func(choice) bool) {
			not := draw("not", 0, 1) == 1
			k := draw("of", 0, plains+numbers-1)
			var l lit
			holds := func(c choice) bool { return c.plain>>k&1 == 1 }
			if k < plains {
				l = plain[k]
			} else {
				i, at := k-plains, int64(draw("at", -1, 8))
				l = s.by(i, at)
				holds = func(c choice) bool { return c.number[i] <= at }
			}
			if not {
				return l.not(), func(c choice) bool { return !holds(c) }
			}
			return l, holds
		}
		var rules []func(choice) bool
		for range draw("clauses", 0, 8) {
			var lits []lit
			var any []func(choice) bool
			for range draw("long", 1, 3) {
				l, holds := literal()
				lits, any = append(lits, l), append(any, holds)
			}
			s.add(lits...)
			rules = append(rules, func(c choice) bool {
				for _, h := range any {
					if h(c) {
						return true
					}
				}
				return false
			})
		}
		for range draw("arrows", 0, 5) {
			if numbers < 2 {
				break
			}
			i := draw("from", 0, numbers-1)
			j := (i + draw("to", 1, numbers-1)) % numbers
			far := int64(draw("far", -2, 4))
			var given []lit
			var ifs []int
			for k := range plain {
				if len(given) < 3 && draw("given", 0, 2) == 0 {
					given, ifs = append(given, plain[k]), append(ifs, k)
				}
			}
			s.apart(i, j, far, given...)
			rules = append(rules, func(c choice) bool {
				for _, k := range ifs {
					if c.plain>>k&1 == 0 {
						return true
					}
				}
				return c.number[j] >= c.number[i]+far
			})
		}
		possibly := func(also []func(choice) bool) bool {
			c := choice{number: make([]int64, numbers)}
			var try func(i int) bool
			try = func(i int) bool {
				if i < numbers {
					for c.number[i] = lo[i]; c.number[i] <= hi[i]; c.number[i]++ {
						if try(i + 1) {
							return true
						}
					}
					return false
				}
				for c.plain = range uint(1) << plains {
					ok := true
					for _, r := range append(rules[:len(rules):len(rules)], also...) {
						ok = ok && r(c)
					}
					if ok {
						return true
					}
				}
				return false
			}
			return try(0)
		}
		for range 3 {
			var given []lit
			var also []func(choice) bool
			for range draw("taken", 0, 3) {
				l, holds := literal()
				given, also = append(given, l), append(also, holds)
			}
			want := impossible
			if possibly(also) {
				want = possible
			}
			if got := s.search(t.Context(), given, 1<<30); got != want {
				t.Fatalf("%v taken for true: %v, want %v", given, got, want)
			}
			if want != possible {
				continue
			}
			c := choice{number: s.low}
			for k, l := range plain {
				if s.val(l) > 0 {
					c.plain |= 1 << k
				}
			}
			for k, r := range append(rules[:len(rules):len(rules)], also...) {
				if !r(c) {
					t.Fatalf("rule %d does not hold: %+v", k, c)
				}
			}
		}
	})
}

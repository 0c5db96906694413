package process

import (
	"math"

	cutter "bodkin/templates/cutting"
)

// BiasYield is all the bias of one cloth and width, and from what squares it can
// be cut where there is no length of cloth to lay the strips across: one by one,
// or round and round as one continuous strip. Sizes are before washing, with what
// the cloth may shrink by.
type BiasYield struct {
	Cloth      string  `json:"cloth"` // role
	WidthMM    float64 `json:"width_mm"`
	TotalMM    float64 `json:"total_mm"`             // all strips end to end
	AreaMM2    float64 `json:"area_mm2"`             // of the strips themselves
	SquareMM   float64 `json:"square_mm"`            // side of a square that gives it in strips
	Strips     int     `json:"strips"`               // that it gives
	RoundMM    float64 `json:"continuous_square_mm"` // side of a square that gives it in one
	Rounds     int     `json:"rounds"`
	JoinMM     float64 `json:"join_mm"` // allowance of a join
	ShrinkPart float64 `json:"shrink"`  // part that the sides are larger by
}

// biasJoin is the allowance of the joins of bias in mm: 1/4 in, common practice, no
// source.
const biasJoin = 6

// biasYields adds up the strips on the bias by cloth and width.
func biasYields(strips []Strip, cloths []clothIn) []BiasYield {
	out := []BiasYield{}
	for _, s := range strips {
		if s.On != "bias" {
			continue
		}
		k := 0
		for k < len(out) && !(out[k].Cloth == s.Cloth && out[k].WidthMM == s.CutWidth) {
			k++
		}
		if k == len(out) {
			out = append(out, BiasYield{Cloth: s.Cloth, WidthMM: s.CutWidth, JoinMM: biasJoin})
		}
		out[k].TotalMM += s.CutLength * float64(s.Count)
	}
	for k := range out {
		y := &out[k]
		y.AreaMM2 = y.TotalMM * y.WidthMM
		y.ShrinkPart = clothRole(cloths, y.Cloth).outer.Shrinkage / 100
		grow := 1 / (1 - y.ShrinkPart)
		side := leastSquare(y.TotalMM, y.WidthMM)
		if b, err := cutter.BiasFromSquare(side, y.WidthMM, biasJoin); err == nil {
			y.SquareMM, y.Strips = math.Ceil(side*grow), len(b.Each)
		}
		if side, err := cutter.ContinuousSquare(y.TotalMM, y.WidthMM, biasJoin); err == nil {
			if _, rounds, err := cutter.ContinuousBias(side, y.WidthMM, biasJoin); err == nil {
				y.RoundMM, y.Rounds = math.Ceil(side*grow), rounds
			}
		}
	}
	return out
}

// leastSquare is the side in whole mm of the least square that gives a length of
// bias in strips.
func leastSquare(total, width float64) float64 {
	least := math.Floor(cutter.AreaRuleSide(total, width)) // no less can do
	for side := max(least, width); ; side++ {
		if b, err := cutter.BiasFromSquare(side, width, biasJoin); err == nil && b.Total >= total {
			return side
		}
	}
}

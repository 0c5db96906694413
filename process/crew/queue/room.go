package queue

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// A Room has stations and visitors.
type Room struct {
	Stations []int // servers of each
	Visitors [][]Stay

	// Spread is how much times vary by chance: 0 not at all, 1 as times
	// between calls at a telephone do (exponential). In between, a time is
	// that part by chance and the rest as given, so that its mean stays.
	Spread float64
}

// A Stay is some time elsewhere and then a turn at a station.
type Stay struct {
	Before  float64 // mean time from the last turn, or the beginning, to coming here
	Station int
	Turn    float64 // mean time at the station
}

// A Report is what happened.
type Report struct {
	End      float64 // when the last turn is over
	Stations []Line
	Waited   []float64 // by visitor: all of her waiting
}

// A Line is what happened at a station.
type Line struct {
	Turns   int
	Waits   float64 // mean wait of a turn; 0 if there was none
	Worst   float64 // longest wait
	Longest int     // most people waiting at a time
	Busy    float64 // part of the time, until the end of all, in which a server is at work
	Peak    float64 // when the line first was longest
}

// An InvalidError says what in a room is out of range.
type InvalidError struct {
	What string
}

func (e *InvalidError) Error() string { return e.What }

func (r Room) check() error {
	for s, n := range r.Stations {
		if n < 1 {
			return &InvalidError{fmt.Sprintf("station %d has %d servers, want 1 or more", s, n)}
		}
	}
	if !(r.Spread >= 0 && r.Spread <= 1) {
		return &InvalidError{fmt.Sprintf("spread is %g, want 0 to 1", r.Spread)}
	}
	for v, stays := range r.Visitors {
		for k, s := range stays {
			if s.Station < 0 || s.Station >= len(r.Stations) {
				return &InvalidError{fmt.Sprintf("visitor %d, stay %d: station is %d, want 0 to %d", v, k, s.Station, len(r.Stations)-1)}
			}
			for _, t := range []float64{s.Before, s.Turn} {
				if !(t >= 0) || math.IsInf(t, 0) {
					return &InvalidError{fmt.Sprintf("visitor %d, stay %d: time is %g, want 0 or more", v, k, t)}
				}
			}
		}
	}
	return nil
}

// chance draws times about their means.
type chance struct {
	r      *rand.Rand
	spread float64
}

func newChance(seed uint64, spread float64) *chance {
	return &chance{rand.New(rand.NewPCG(seed, 0)), spread}
}

func (c *chance) time(mean float64) float64 {
	if c.spread == 0 {
		return mean
	}
	return mean * (1 - c.spread + c.spread*c.r.ExpFloat64())
}

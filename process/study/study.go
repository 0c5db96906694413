// Package study works out times by work study: what a clock saw becomes basic
// time by the rating of the one who was watched, and standard time by the
// allowances for rests and for what comes between.
//
// The formulas are those of work measurement: basic time = observed time ×
// observed rating / standard rating; standard time = basic time × (1 +
// allowance) ("Standard minute value", an article of 2016; S. Konz in
// Fundamentals and Assessment Tools for Occupational Ergonomics, ch. 38).
package study

// Standard is the rating of somebody who works at the usual pace.
const Standard = 100

// Element is a part of a piece of work that was watched. Times are in any one
// unit.
type Element struct {
	Seen     []float64 // what the clock showed each time
	Rating   float64   // how briskly it was done; [Standard] is the usual pace
	PerCycle float64   // how often it is done for each piece
	Rest     float64   // part of it that is added for rests: 0.1 is a tenth
}

// Basic is the mean of what was seen, at the usual pace.
func (e Element) Basic() float64 {
	sum := 0.0
	for _, s := range e.Seen {
		sum += s
	}
	return sum / float64(len(e.Seen)) * e.Rating / Standard
}

// Selected is the basic time for one piece.
func (e Element) Selected() float64 { return e.Basic() * e.PerCycle }

// Work is the time of a piece of work by what does it, at the usual pace.
type Work struct {
	Hands   float64
	Machine float64
}

// Allowances are added to basic time, as parts of it.
type Allowances struct {
	Hands float64 // rests: on the work of the hands, not on what a machine does by itself
	All   float64 // contingencies: on everything, rests included
}

// Standard is the standard time of a piece of work.
func (a Allowances) Standard(w Work) float64 {
	return (w.Hands*(1+a.Hands) + w.Machine) * (1 + a.All)
}

// Total is the standard time of elements, each with its own rest, and with what
// is added to everything.
func Total(elements []Element, all float64) float64 {
	sum := 0.0
	for _, e := range elements {
		sum += Allowances{Hands: e.Rest, All: all}.Standard(Work{Hands: e.Selected()})
	}
	return sum
}

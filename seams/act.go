package seams

import (
	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Act is something the hands do: place, stitch, trim, press. It decides at
// which kind of station a pass is done and how long it takes.
type Act struct {
	Name     string  `yaml:"act,required"`
	Title    string  `yaml:"title,required"`
	Station  string  `yaml:"station,required" oneof:"table machine iron hand"`
	Start    float64 `yaml:"start"`          // minutes to take it up and lay it down
	PerMetre float64 `yaml:"per_metre"`      // minutes a metre; for machine acts besides the stitching itself
	Basis    string  `yaml:"basis,required"` // what the minutes rest on
	Caution  string  `yaml:"caution"`        // name of a caution, where the act can hurt
	Source   string  `yaml:"source,required"`
}

// Caution is a warning printed where a material or an act calls for it.
type Caution struct {
	Name   string    `yaml:"caution,required"`
	Title  string    `yaml:"title,required"`
	When   form.Text `yaml:"when"` // condition over Facts; left out where only acts call for it
	Text   string    `yaml:"text,required"`
	Why    string    `yaml:"why,required"`
	Source string    `yaml:"source,required"`

	rule *formula.Formula
}

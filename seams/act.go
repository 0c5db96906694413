package seams

// Act is something the hands do: place, stitch, trim, press. It decides at
// which kind of station a pass is done and how long it takes.
type Act struct {
	Name     string  `yaml:"act"`
	Title    string  `yaml:"title"`
	Station  string  `yaml:"station"`   // table, machine, iron, hand
	Start    float64 `yaml:"start"`     // minutes to take it up and lay it down
	PerMetre float64 `yaml:"per_metre"` // minutes a metre; for machine acts besides the stitching itself
	Basis    string  `yaml:"basis"`     // what the minutes rest on
	Caution  string  `yaml:"caution"`   // name of a caution, where the act can hurt
	Source   string  `yaml:"source"`
}

// Caution is a warning printed where a material or an act calls for it.
type Caution struct {
	Name   string `yaml:"caution"`
	When   string `yaml:"when"` // condition over Facts; empty when only acts call for it
	Text   string `yaml:"text"`
	Why    string `yaml:"why"`
	Source string `yaml:"source"`
}

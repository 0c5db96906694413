package seams

import "bodkin/seams/length"

// Cloth is a material by its properties. Rules read these, never the name.
//
// An entry is whole, or it is like another and says what differs: see [Cloth.Like].
type Cloth struct {
	Name  string `yaml:"cloth,required"`
	Like  string `yaml:"like"`  // the cloth that what is left out is taken over from
	Title string `yaml:"title"` // where it is like another: the name in words, if left out
	Properties
	Widths    []length.MM  `yaml:"widths"`    // usual widths, selvedge to selvedge
	Estimates []string     `yaml:"estimates"` // keys above whose figure is an estimate
	Differ    []Difference `yaml:"differ"`
	Source    string       `yaml:"source,required"`
	// Inferred are the keys taken over from the cloth that it is like.
	Inferred []string `yaml:"-"`
	Own      bool     `yaml:"-"` // an entry of the user's
}

// Properties are what rules read of a cloth, and what a maker tells of her own.
type Properties struct {
	Fibre     string  `yaml:"fibre"` // of a blend, the one that bears the least heat
	Structure string  `yaml:"structure" oneof:"woven knit nonwoven"`
	Weight    float64 `yaml:"weight" units:"g/m2=1 g/m²=1 oz/yd2=33.906 oz/yd²=33.906"` // g/m²
	Thickness float64 `yaml:"thickness" units:"mm=1 cm=10 in=25.4"`                     // mm, one ply
	Sheerness int     `yaml:"sheerness"`                                                // 0 opaque, 1 shows dark through light, 2 see-through, 3 transparent
	Fraying   int     `yaml:"fraying"`                                                  // 0 does not fray … 3 frays at a touch
	Slip      int     `yaml:"slip"`                                                     // 0 stays put … 3 slides off the table
	Stretch   Stretch `yaml:"stretch"`
	Recovery  float64 `yaml:"recovery" units:"%=1"` // % of the stretch that it gives back; knits
	Crease    int     `yaml:"crease"`               // 0 springs back … 3 creases at a touch
	Pile      bool    `yaml:"pile"`
	Lace      bool    `yaml:"lace"`    // openwork: lace, net, mesh
	Coated    bool    `yaml:"coated"`  // a film on the face
	OneWay    bool    `yaml:"one_way"` // nap or print with a direction
	Shine     bool    `yaml:"shine"`   // an iron on the right side leaves a shine
	HolesStay bool    `yaml:"holes_stay"`
	HeatDots  int     `yaml:"heat_dots"`             // ISO 3758: 0 do not iron, 1 110 °C, 2 150 °C, 3 200 °C
	Steam     bool    `yaml:"steam"`                 // steam does no harm
	Shrinkage float64 `yaml:"shrinkage" units:"%=1"` // relaxation along the length, %
	Flammable bool    `yaml:"flammable"`             // light, open or fuzzy: catches quickly
}

// Stretch is how far a cloth gives, in per cent of its length at rest.
type Stretch struct {
	Across float64 `yaml:"across" units:"%=1"`
	Along  float64 `yaml:"along" units:"%=1"`
}

// Woven reports whether the cloth is woven (and so frays and has a grain).
func (c Cloth) Woven() bool { return c.Structure == "woven" }

// Knit reports whether the cloth is knitted.
func (c Cloth) Knit() bool { return c.Structure == "knit" }

// Facts are the cloth's properties as rules see them.
func (c Cloth) Facts() ClothFacts {
	return ClothFacts{
		Weight: c.Weight, Thickness: c.Thickness, Sheer: c.Sheerness >= 2, Sheerness: c.Sheerness,
		Fraying: c.Fraying, Slip: c.Slip,
		Stretch: max(c.Stretch.Across, c.Stretch.Along), StretchAcross: c.Stretch.Across, StretchAlong: c.Stretch.Along,
		Recovery: c.Recovery, Crease: c.Crease,
		Woven: c.Woven(), Knit: c.Knit(), Pile: c.Pile, Lace: c.Lace, Coated: c.Coated,
		OneWay: c.OneWay, Shine: c.Shine, HolesStay: c.HolesStay, HeatDots: c.HeatDots, Steam: c.Steam, Flammable: c.Flammable, Fibre: c.Fibre,
	}
}

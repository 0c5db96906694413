package seams

// Facts are what a rule or a formula may ask about, all lengths in mm.
// They are plain float64, int, bool and string because conditions compare them.
type Facts struct {
	Cloth    ClothFacts    `expr:"cloth"`   // the garment's cloth at this line
	Applied  ClothFacts    `expr:"applied"` // the strip's cloth, or the other ply's in a join of two cloths
	Join     LineFacts     `expr:"join"`    // for joins
	Edge     LineFacts     `expr:"edge"`    // for free edges
	Part     PartFacts     `expr:"part"`    // for interfacings
	Garment  GarmentFacts  `expr:"garment"`
	Workroom WorkroomFacts `expr:"workroom"`
}

// ClothFacts are the properties of [Cloth] under the names rules use.
type ClothFacts struct {
	Weight        float64 `expr:"weight"`
	Thickness     float64 `expr:"thickness"`
	Sheer         bool    `expr:"sheer"` // sheerness 2 or more
	Sheerness     int     `expr:"sheerness"`
	Fraying       int     `expr:"fraying"`
	Slip          int     `expr:"slip"`
	Stretch       float64 `expr:"stretch"` // the greater of across and along, %
	StretchAcross float64 `expr:"stretch_across"`
	StretchAlong  float64 `expr:"stretch_along"`
	Recovery      float64 `expr:"recovery"` // % of the stretch given back
	Crease        int     `expr:"crease"`
	Woven         bool    `expr:"woven"`
	Knit          bool    `expr:"knit"`
	Pile          bool    `expr:"pile"`
	Lace          bool    `expr:"lace"` // openwork
	Coated        bool    `expr:"coated"`
	OneWay        bool    `expr:"one_way"`
	Shine         bool    `expr:"shine"`
	HolesStay     bool    `expr:"holes_stay"`
	HeatDots      int     `expr:"heat_dots"`
	Steam         bool    `expr:"steam"`
	Flammable     bool    `expr:"flammable"`
	Fibre         string  `expr:"fibre"`
}

// LineFacts describe a seam line or a free edge.
type LineFacts struct {
	Length         float64 `expr:"length"`          // one run of it
	TightestRadius float64 `expr:"tightest_radius"` // mm; 1e6 where straight
	Turning        float64 `expr:"turning"`         // degrees, all bends added
	Curved         bool    `expr:"curved"`          // tightest radius below 500 mm
	Hollow         bool    `expr:"hollow"`          // a free edge that curves into the cloth: neck, armhole
	Point          bool    `expr:"point"`           // a free edge that comes to a point in the cloth, as a V neck does
	Closed         bool    `expr:"closed"`          // runs all the way round
	Flat           bool    `expr:"flat"`            // a free edge that is worked while it lies open; a later join closes it where it is closed
	Bias           float64 `expr:"bias"`            // degrees off the nearer grain where it is steepest, 0 to 45
	Slanting       float64 `expr:"slanting"`        // mm of it that run nearly straight and 20 degrees or more off the grain
	Across         bool    `expr:"across"`          // it runs rather across the garment than up and down it
	Stretch        float64 `expr:"stretch"`         // what the cloth gives along it, %, each length by its direction
	Gives          bool    `expr:"gives"`           // a free edge that is stretched when the garment is put on
	Strain         int     `expr:"strain"`          // 0 none, 1 light, 2 worn tight or pulled, 3 seat and crotch
	Eased          float64 `expr:"eased"`           // mm of the longer edge to take up
	InsideSeen     bool    `expr:"inside_seen"`
	Depth          float64 `expr:"depth"`       // finished depth the garment asks for; 0 where it does not
	Lap            float64 `expr:"lap"`         // what its own piece stands out beyond an opening
	OwnWidth       float64 `expr:"own_width"`   // of a detail: finished width of its own piece, across the grain; 0 where it has none
	Fullness       float64 `expr:"fullness"`    // mm by which the turned-up edge is longer than where it lies
	Allowance      float64 `expr:"allowance"`   // what the edge is cut with; known once its treatment is chosen; of a join, the least that what is set into it asks for
	Opening        float64 `expr:"opening"`     // of a join: what a zip or a pocket set into it leaves open
	Elastic        float64 `expr:"elastic"`     // width of elastic the garment asks for
	Grip           float64 `expr:"grip"`        // body measure that the elastic holds
	Neatened       bool    `expr:"neatened"`    // of what is set into a join: the seam neatens its edges all along, beside what is set in too, or a lining hides them
	RunsOn         bool    `expr:"runs_on"`     // a join beyond whose end the same line goes on as another edge: a slit, a zip
	ClosesBand     bool    `expr:"closes_band"` // a join that takes in the ends of a band
	OtherCloth     bool    `expr:"other_cloth"` // the second ply or the strip is of another cloth
}

// GarmentFacts describe the whole garment.
type GarmentFacts struct {
	Lined bool `expr:"lined"`
	Child bool `expr:"child"`
	Loose bool `expr:"loose"`
}

// WorkroomFacts are what stands in the room and what the house prefers.
type WorkroomFacts struct {
	Forms  func(stitch string) bool                     `expr:"forms"`
	House  func(name string, otherwise float64) float64 `expr:"house"` // a house figure in mm, or otherwise
	Iron   bool                                         `expr:"iron"`
	Dots   int                                          `expr:"dots"` // hottest setting of the iron, ISO 3758; where it is not told, 3 with an iron
	Steam  bool                                         `expr:"steam"`
	Favour string                                       `expr:"favour" words:"neat quick strong"` // or empty
}

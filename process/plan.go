package process

// Schema is the version of the plan's JSON form.
const Schema = "bodkin-plan-1"

// Plan is everything worked out, one value, also written as JSON. Lengths are
// mm, times minutes. Slices are never nil, so that the JSON has no nulls.
type Plan struct {
	Schema      string        `json:"schema"`
	Garment     string        `json:"garment"`
	GarmentName string        `json:"garment_title"`
	Title       string        `json:"title"`
	Units       string        `json:"units"` // cm or in: what words are written in
	Workroom    string        `json:"workroom"`
	Quantity    int           `json:"quantity"`
	Notes       string        `json:"notes"` // Markdown of the maker's own
	Measures    []Measure     `json:"measures"`
	Choices     []Measure     `json:"choices"`
	Cloths      []ClothUse    `json:"cloths"`
	Pieces      []Piece       `json:"pieces"`
	Strips      []Strip       `json:"strips"`
	Bias        []BiasYield   `json:"bias"` // all strips on the bias of one cloth and width together
	Notions     []Notion      `json:"notions"`
	Seams       []Seam        `json:"seams"`
	Interfacing []Interfacing `json:"interfacing"`
	Stations    []Station     `json:"stations"`
	Operations  []Operation   `json:"operations"` // in planned order
	Steps       []Step        `json:"steps"`
	Changes     []Change      `json:"changes"`
	Thread      []Thread      `json:"thread"`
	Bobbins     []BobbinUse   `json:"bobbins"`
	Needles     []NeedleUse   `json:"needles"`
	Tools       []Tool        `json:"tools"` // that a construction asks for, besides what every maker has
	Checks      []Check       `json:"checks"`
	Cautions    []Caution     `json:"cautions"`
	Notices     []Notice      `json:"notices"`         // estimates and limits the reader should know of
	Begun       *Begun        `json:"begun,omitempty"` // where the work has been begun
	Order       Order         `json:"order"`
	Totals      Totals        `json:"totals"`
	Also        []OtherSize   `json:"also,omitempty"`     // what is cut for further sizes
	Together    *Together     `json:"together,omitempty"` // what all sizes take
}

// Tool is a small thing that constructions of the plan ask for.
type Tool struct {
	Name  string   `json:"name"`
	Title string   `json:"title"`
	For   string   `json:"for"`   // what it does
	Seams []string `json:"seams"` // names of the lines that want it
}

// Measure is a measure or choice as used.
type Measure struct {
	Name    string  `json:"name"`
	Title   string  `json:"title"`
	MM      float64 `json:"mm,omitempty"`
	Word    string  `json:"word,omitempty"`
	Number  float64 `json:"number,omitempty"`
	Default bool    `json:"default"`        // not given: the garment's own
	From    string  `json:"from,omitempty"` // the named size that it is from
}

// ClothUse is a cloth of the job in its role.
type ClothUse struct {
	Role     string   `json:"role"`
	Name     string   `json:"name"`
	Title    string   `json:"title"`
	Colour   string   `json:"colour"`
	WidthMM  float64  `json:"width_mm"`
	AreaMM2  float64  `json:"area_mm2"`  // of the cut pieces and strips in it
	LengthMM float64  `json:"length_mm"` // estimate of what to buy, with shrinkage
	LeastMM  float64  `json:"least_mm"`  // no lay of these pieces does with less, with shrinkage
	Basis    string   `json:"basis"`     // what the estimate rests on
	HeatDots int      `json:"heat_dots"`
	Handling []string `json:"handling"` // words on handling this cloth

	Own       bool         `json:"own"`  // told of by the job, or on the maker's own shelf
	Like      string       `json:"like"` // the cloth that it takes over from what was not told
	Inferred  []string     `json:"inferred"`
	Resembles *Resemblance `json:"resembles,omitempty"` // of her own cloth, or of two layers as one
	Under     *Underlay    `json:"under,omitempty"`
}

// Resemblance is the cloth of the shelf that another is most like.
type Resemblance struct {
	Name  string   `json:"name"`
	Title string   `json:"title"`
	How   []string `json:"how"` // what they share and wherein they differ
}

// Underlay is a cloth that lies under another, the two sewn as one.
type Underlay struct {
	Name     string  `json:"name"`
	Title    string  `json:"title"`
	WidthMM  float64 `json:"width_mm"`
	AreaMM2  float64 `json:"area_mm2"`  // of the cut pieces; strips have no under layer
	LengthMM float64 `json:"length_mm"` // estimate of what to buy, with shrinkage
}

// Point is x, y in mm; y grows downwards on the piece as it is drafted.
type Point struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// Piece is a piece to cut.
type Piece struct {
	Name      string  `json:"name"`
	Title     string  `json:"title"`
	Cloth     string  `json:"cloth"` // role
	Cut       string  `json:"cut"`   // fold, pair, one
	Count     int     `json:"count"`
	Grain     string  `json:"grain"`
	Bias      bool    `json:"bias"`             // laid at 45 degrees to the grain, opened out in a single layer
	Turned    bool    `json:"turned,omitempty"` // laid the other way up than the rest, in a cloth with a direction
	NetWidth  float64 `json:"net_width_mm"`
	NetHeight float64 `json:"net_height_mm"`
	Width     float64 `json:"width_mm"` // cut size, opened out where on the fold
	Height    float64 `json:"height_mm"`
	AreaMM2   float64 `json:"area_mm2"` // one cut piece, opened out
	Edges     []Edge  `json:"edges"`
	Net       []Point `json:"net"` // half where on the fold
	CutLine   []Point `json:"cut_line"`
	Marks     []Mark  `json:"marks"`
	Drawn     []Drawn `json:"drawn"` // notches, legs, lines of details
	Chalk     Chalk   `json:"chalk"`
}

// Drawn is a straight line on a cut piece: a notch or the leg of a dart, from its
// cutting line inwards, or a line along which a detail lies.
type Drawn struct {
	Kind string `json:"kind"` // notch: to the seam line; leg: to the point of a dart; line: of a detail
	Name string `json:"name"`
	From Point  `json:"from"`
	To   Point  `json:"to"`
}

// Chalk is how a piece is marked straight on the cloth, without a paper pattern.
type Chalk struct {
	Fold   string       `json:"fold"`      // edge that in is counted from; empty: the piece's left side
	Within float64      `json:"within_mm"` // how closely what is drawn keeps to the cutting line
	Points []ChalkPoint `json:"points"`    // of the cutting line, in the order of marking
	Marks  []ChalkPoint `json:"marks"`     // of the points to transfer
}

// ChalkPoint is one point to mark.
type ChalkPoint struct {
	Number int     `json:"number"` // 0 for a mark
	Name   string  `json:"name,omitempty"`
	Before string  `json:"before,omitempty"` // edges that meet here; alike within an edge
	After  string  `json:"after,omitempty"`
	Down   float64 `json:"down_mm"` // from the piece's top line
	In     float64 `json:"in_mm"`
	By     string  `json:"by,omitempty"`       // line from the point before: begin, straight, bow, smooth
	Depth  float64 `json:"depth_mm,omitempty"` // of a bow at its middle, above 0 outward
}

// Mark is a point to transfer to the cloth.
type Mark struct {
	Name string  `json:"name"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
}

// Edge is an edge of a piece with the allowance it is cut with.
type Edge struct {
	Name      string  `json:"name"`
	Length    float64 `json:"length_mm"`
	Allowance float64 `json:"allowance_mm"`
	Spare     float64 `json:"spare_mm,omitempty"` // of the allowance, what is cut off before the seam is sewn
	Because   string  `json:"because,omitempty"`  // why it is cut with that
	Seam      string  `json:"seam"`               // name in Seams; "fold" on the fold; the dart's name at a mouth
	Middle    Point   `json:"middle"`             // where to write the allowance on a piece map
	Begins    int     `json:"begins"`             // its first point in Net; it runs to the first of the next edge
}

// Strip is a binding, band or casing strip to cut.
type Strip struct {
	Name          string  `json:"name"`
	Title         string  `json:"title"`
	Cloth         string  `json:"cloth"` // role
	Seam          string  `json:"seam"`
	On            string  `json:"on"`          // bias, straight, across a knit
	Finished      float64 `json:"finished_mm"` // length of the edge it covers
	CutWidth      float64 `json:"cut_width_mm"`
	CutLength     float64 `json:"cut_length_mm"`  // one whole strip, ends included, joins not
	Count         int     `json:"count"`          // whole strips wanted
	Lengths       int     `json:"lengths"`        // cut lengths that make one strip
	EachLength    float64 `json:"each_length_mm"` // of one cut length, join allowances included
	Joins         int     `json:"joins"`          // in one strip
	JoinKind      string  `json:"join_kind"`      // diagonal, straight
	JoinAllowance float64 `json:"join_allowance_mm"`
}

// Notion is something besides cloth and thread: elastic.
type Notion struct {
	Name   string  `json:"name"`
	Title  string  `json:"title"`
	Length float64 `json:"length_mm"`
	Width  float64 `json:"width_mm"`
	Count  int     `json:"count"`
	Basis  string  `json:"basis"`
}

// Seam is a join, an edge treatment or a detail with its chosen construction.
type Seam struct {
	Name              string     `json:"name"`
	Title             string     `json:"title"`
	Kind              string     `json:"kind"` // seam, hem, binding, facing, band, casing, dart, staystitch
	Construction      string     `json:"construction"`
	ConstructionTitle string     `json:"construction_title"`
	ISO4916Class      int        `json:"iso4916_class"`
	Stitches          []string   `json:"stitches"`
	Length            float64    `json:"length_mm"` // one run
	Copies            int        `json:"copies"`
	Allowance         float64    `json:"allowance_mm"`
	AllowanceB        float64    `json:"allowance_b_mm"`
	Finished          float64    `json:"finished_mm"`
	Sizes             []Size     `json:"sizes"`
	Work              string     `json:"work"` // flat, round, or empty where there is no choice
	WorkBecause       string     `json:"work_because"`
	Insisted          bool       `json:"insisted"`
	Anyway            bool       `json:"anyway"` // insisted on although ruled out
	Score             float64    `json:"score"`
	Minutes           float64    `json:"minutes"` // all copies, one garment
	Because           []string   `json:"because"`
	Against           []string   `json:"against"` // what spoke against it and was outweighed
	Rejected          []Rejected `json:"rejected"`
	Section           Section    `json:"section"`
	Source            string     `json:"source"`
	Strength          *Strength  `json:"strength,omitempty"` // of a seam under strain in woven cloth
	Course            Course     `json:"course"`
}

// Course is where a line lies on the garment: along which edges of which pieces.
type Course struct {
	A   []Run    `json:"a"`   // in walking order; of a join its first side
	B   []Run    `json:"b"`   // what is sewn to them, walked beside them from the same end
	Own []string `json:"own"` // pieces that are sewn on: a facing's, a pocket's, a collar's
	// Of what lies in a part of a join: the join, and from where to where along it.
	In   string  `json:"in,omitempty"`
	From float64 `json:"from_mm,omitempty"`
	To   float64 `json:"to_mm,omitempty"`
}

// Run is an edge of a piece as it is walked.
type Run struct {
	Piece string `json:"piece"`
	Edge  string `json:"edge"`
	Back  bool   `json:"back"` // from its last point in Net to its first
}

// Size is a named dimension of a construction.
type Size struct {
	Name string  `json:"name"`
	MM   float64 `json:"mm"`
}

// Rejected is a runner-up and why it lost.
type Rejected struct {
	Construction string   `json:"construction"`
	Title        string   `json:"title"`
	RuledOut     bool     `json:"ruled_out"`
	Score        float64  `json:"score"`
	Because      []string `json:"because"`
}

// Section is the construction's cross-section, finished: x in mm to scale, y in
// plies. Its stages show how the work lies on the way there.
type Section struct {
	Items  []SectionItem `json:"items"`
	Does   []string      `json:"does"` // titles of the acts after the last stage, in order
	Stages []Stage       `json:"stages"`
}

// Stage is how the work lies when some of a construction's passes are done.
type Stage struct {
	Does  []string      `json:"does"` // titles of the acts since the stage before, in order
	Items []SectionItem `json:"items"`
}

// SectionItem is a ply, a stitch or a dimension of a section.
type SectionItem struct {
	Ply     string  `json:"ply,omitempty"` // a, b, strip, interfacing, elastic
	Stitch  string  `json:"stitch,omitempty"`
	Size    string  `json:"size,omitempty"`
	MM      float64 `json:"mm,omitempty"` // the size's value
	Raw     bool    `json:"raw,omitempty"`
	Right   string  `json:"right,omitempty"`
	Row     int     `json:"row,omitempty"`
	Through []Point `json:"through"`
}

// Interfacing is a piece of interfacing to cut.
type Interfacing struct {
	Name          string     `json:"name"`
	Piece         string     `json:"piece"` // piece or strip that it steadies
	Title         string     `json:"title"`
	Material      string     `json:"material"`
	MaterialTitle string     `json:"material_title"`
	Cut           [2]float64 `json:"cut_mm"` // width, height
	Count         int        `json:"count"`
	Part          string     `json:"part"`               // half, whole; of a tape, seam line; hem of a strip in one
	Tape          bool       `json:"tape"`               // it lies along a line, as long as that
	On            string     `json:"on"`                 // of a strip in a hem: bias, straight; else empty
	Joins         int        `json:"joins"`              // of a strip that is laid in several lengths, each of the size above
	Below         float64    `json:"below_mm,omitempty"` // of a strip in a hem: how far it goes beyond the hem line into the allowance
	Fusible       bool       `json:"fusible"`
	HeatDots      int        `json:"heat_dots"`
	Attach        string     `json:"attach"`
	Trim          string     `json:"trim"`
	Because       []string   `json:"because"`
	Rejected      []Rejected `json:"rejected"`
}

// Station is a place where work is done: a machine, the iron, the table, the hands.
type Station struct {
	Name    string `json:"name"`
	Title   string `json:"title"`
	Kind    string `json:"kind"`              // machine, iron, hand, table
	Machine string `json:"machine,omitempty"` // name on the shelf
}

// Operation is one pass on one seam.
type Operation struct {
	ID      string   `json:"id"`
	Does    string   `json:"does"`
	Part    string   `json:"part"` // title of what is in hand
	Seam    string   `json:"seam"`
	Pass    int      `json:"pass"` // from 1 in its construction
	Station string   `json:"station"`
	Setting Setting  `json:"setting"`
	Pressed *Pressed `json:"pressed,omitempty"` // of a press step with an iron
	Minutes float64  `json:"minutes"`           // all copies, all garments
	Basis   string   `json:"basis"`
	Length  float64  `json:"length_mm"` // worked length, all copies, one garment
	After   []After  `json:"after"`
	Text    string   `json:"text"`
	Good    string   `json:"good"`              // how it looks when right
	Closing bool     `json:"closing"`           // finishes a flat-worked edge, after the seam that closes it
	Garment int      `json:"garment,omitempty"` // of a sitting: its number; 0 of what serves all
}

// Setting is what the station must be set to.
type Setting struct {
	Thread   string  `json:"thread"`  // through the needles
	Bobbin   string  `json:"bobbin"`  // colour below; empty where the stitch has none
	Loopers  string  `json:"loopers"` // colour; empty where the stitch has none
	Needle   string  `json:"needle"`
	Foot     string  `json:"foot"`
	StitchMM float64 `json:"stitch_mm"`
	Stitch   string  `json:"stitch"` // ISO 4915 type
	HeatDots int     `json:"heat_dots"`
	Steam    bool    `json:"steam"`
}

// After is an operation that must come first, and why.
type After struct {
	ID      string `json:"id"`
	Because string `json:"because"`
}

// Step is operations done one after another at one station with one setting.
type Step struct {
	Number     int      `json:"number"`
	Title      string   `json:"title"`
	Station    string   `json:"station"`
	Setting    Setting  `json:"setting"`
	Operations []string `json:"operations"`
	Minutes    float64  `json:"minutes"`
	Paper      []int    `json:"paper,omitempty"`    // of work begun: the steps that held its operations in the plan that was begun
	Garments   []int    `json:"garments,omitempty"` // of a sitting: the numbers of those that it works on
}

// Change is what must be altered before a step.
type Change struct {
	BeforeStep int     `json:"before_step"`
	Station    string  `json:"station"`
	What       string  `json:"what"` // thread, bobbin, loopers, needle, foot, stitch, heat, move
	From       string  `json:"from"`
	To         string  `json:"to"`
	Minutes    float64 `json:"minutes"`
}

// Thread is what one colour uses, all garments, waste included.
type Thread struct {
	Colour   string   `json:"colour"`
	Kind     string   `json:"kind"`
	Tex      float64  `json:"tex"`
	NeedleM  float64  `json:"needle_m"`
	LooperM  float64  `json:"looper_m"` // bobbin and looper threads
	Metres   float64  `json:"metres"`
	Bobbins  int      `json:"bobbins"`
	ForSeams []string `json:"for_seams"`
	Basis    string   `json:"basis"`
}

// NeedleUse is a needle to have at hand.
type NeedleUse struct {
	Needle string   `json:"needle"`
	For    string   `json:"for"`
	Hints  []string `json:"hints"` // tension, foot, pressure, plate
	Source string   `json:"source"`
}

// Check is a measure to take while it can still be mended.
type Check struct {
	AfterStep      int     `json:"after_step"`
	AfterOperation string  `json:"after_operation"`
	What           string  `json:"what"`
	Expect         float64 `json:"expect_mm"`
	Tolerance      float64 `json:"tolerance_mm"`
}

// Caution is a warning.
type Caution struct {
	Text string `json:"text"`
	Why  string `json:"why"`
}

// Notice is something the reader should know: an estimate, a limit.
type Notice struct {
	About string `json:"about"`
	Text  string `json:"text"`
}

// Order tells how good the order of steps is.
type Order struct {
	ChangeMinutes           float64 `json:"change_minutes"`
	BoundMinutes            float64 `json:"bound_minutes"`
	Proved                  bool    `json:"proved"`
	SeamBySeamMinutes       float64 `json:"seam_by_seam_minutes"`
	SeamBySeamMoves         int     `json:"seam_by_seam_moves"`
	SeamBySeamThreadChanges int     `json:"seam_by_seam_thread_changes"`
	Explored                int     `json:"explored"`

	Forced   []Forced  `json:"forced"`             // of what is changed, what no order can avoid
	Textbook *Textbook `json:"textbook,omitempty"` // where a published order fits the garment

	Wishes []Wished `json:"wishes"` // of the job, in its order

	Own *OwnOrder `json:"own,omitempty"` // where the job asks for an order of its own
}

// OwnOrder is the order that the job asks for, and what became of it.
type OwnOrder struct {
	Order   []string  `json:"order"` // as it was written
	Pins    []string  `json:"pins"`
	Refused []Refused `json:"refused"` // places where the order could not be kept
	// FreeMinutes is what the changes take where nothing is asked for, and
	// FreeProved whether that is proved to be the least.
	FreeMinutes float64 `json:"free_minutes"`
	FreeProved  bool    `json:"free_proved"`
}

// Refused says that one thing was asked for before another, and why it cannot be.
type Refused struct {
	First   string   `json:"first"`
	Then    string   `json:"then"`
	Because []Reason `json:"because"`
}

// Reason is one link of a chain: the operation Then waits for First.
type Reason struct {
	Then    string `json:"then"`
	First   string `json:"first"`
	Because string `json:"because"`
}

// Totals are sums over the plan.
type Totals struct {
	Operations    int     `json:"operations"`
	Steps         int     `json:"steps"`
	SewMinutes    float64 `json:"sew_minutes"`
	ChangeMinutes float64 `json:"change_minutes"`
	ThreadChanges int     `json:"thread_changes"`
	NeedleChanges int     `json:"needle_changes"`
	StationMoves  int     `json:"station_moves"`
	WindMinutes   float64 `json:"wind_minutes"` // for the bobbins, before the work begins
}

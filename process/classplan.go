package process

// ClassSchema is the version of a class's JSON form.
const ClassSchema = "bodkin-class-1"

// ClassPlan is a class worked out. Times are minutes. Slices are never nil.
type ClassPlan struct {
	Schema      string         `json:"schema"`
	Title       string         `json:"title"`
	Garment     string         `json:"garment"`
	GarmentName string         `json:"garment_title"`
	Room        string         `json:"room"`
	Units       string         `json:"units"`
	Notes       string         `json:"notes"`
	Students    []StudentPlan  `json:"students"`
	Numbers     []ClassNumber  `json:"numbers"`
	Sessions    []ClassSession `json:"sessions"`
	Buy         []ClassCloth   `json:"buy"`
	Thread      []ClassThread  `json:"thread"`
	Order       ClassOrder     `json:"order"`
	Notices     []Notice       `json:"notices"`
}

// StudentPlan is one student's part.
type StudentPlan struct {
	Name        string      `json:"name"`
	Pace        float64     `json:"pace"`
	Plan        *Plan       `json:"plan"` // in the order of the class
	Turns       []ClassTurn `json:"turns"`
	Free        []string    `json:"free"`           // numbers that she does not need
	Change      float64     `json:"change_minutes"` // in the order of the class
	Alone       float64     `json:"alone_change_minutes"`
	AloneProved bool        `json:"alone_proved"` // no order of her own needs less than that
}

// ClassTurn is a number as one student does it.
type ClassTurn struct {
	Number    string  `json:"number"`
	Operation string  `json:"operation"` // of her plan
	Minutes   float64 `json:"minutes"`   // at her pace, with the changes before it
}

// ClassNumber is one place in the sequence that all share.
type ClassNumber struct {
	Number   string         `json:"number"` // 12, or 12a where it came in later
	Key      string         `json:"key"`    // what it is, for good
	Title    string         `json:"title"`
	Seam     string         `json:"seam"`
	Station  string         `json:"station"` // title of the place, of the first variant
	Session  int            `json:"session"` // from 1
	Homework bool           `json:"homework"`
	Minutes  float64        `json:"minutes"` // of the slowest
	Variants []ClassVariant `json:"variants"`
	Free     []string       `json:"free"` // students who do not need it
}

// ClassVariant is a number as some of the students do it.
type ClassVariant struct {
	Students     []string `json:"students"`
	Construction string   `json:"construction"` // its title; empty where it belongs to no seam
	Station      string   `json:"station"`
	Setting      Setting  `json:"setting"` // without thread and needle, which are each student's own
	Text         string   `json:"text"`
	Good         string   `json:"good"`
	Checks       []Check  `json:"checks"`
}

// ClassSession is one meeting.
type ClassSession struct {
	Number    int             `json:"number"`
	Date      string          `json:"date"`
	First     string          `json:"first"` // numbers
	Last      string          `json:"last"`
	Homework  []string        `json:"homework"` // numbers to be done before the next session
	SettingUp float64         `json:"setting_up_minutes"`
	Work      float64         `json:"work_minutes"`
	Clearing  float64         `json:"clearing_minutes"`
	Slowest   string          `json:"slowest"` // who needs longest
	Needs     float64         `json:"needs_minutes"`
	Rests     string          `json:"rests"` // why the work can rest here
	Shown     []Demonstration `json:"demonstrations"`
	Queues    []ClassQueue    `json:"queues"`
	Groups    int             `json:"groups"` // that begin one after another; 1 is all at once
	Apart     float64         `json:"groups_apart_minutes"`
	Threading []Threading     `json:"threading"`
	Ready     []Preparation   `json:"ready"` // before they come
	Extra     bool            `json:"extra"` // beyond the sessions that the class has
}

// Demonstration is what the teacher shows before a number.
type Demonstration struct {
	Before  string  `json:"before"`
	What    string  `json:"what"`
	At      float64 `json:"at_minutes"` // from the beginning of the session, when the quickest comes to it
	Minutes float64 `json:"minutes"`    // estimate: about as long as doing it once
}

// ClassQueue is the waiting at one kind of station in a session.
type ClassQueue struct {
	Station   string  `json:"station"`
	Count     int     `json:"count"`
	Turns     int     `json:"turns"`
	Wait      float64 `json:"mean_wait_minutes"` // a turn
	Worst     float64 `json:"worst_wait_minutes"`
	Longest   int     `json:"longest_line"`
	Peak      float64 `json:"peak_minutes"` // from the beginning of work
	Busy      float64 `json:"busy"`         // part of the time
	Staggered float64 `json:"staggered_mean_wait_minutes"`
}

// Threading is what colour machines of a kind are threaded with in a session.
type Threading struct {
	Station  string   `json:"station"`
	Colour   string   `json:"colour"`
	Machines int      `json:"machines"` // 0: changed on a machine of another colour
	Students []string `json:"students"`
}

// ClassCloth is what one student brings or buys.
type ClassCloth struct {
	Student  string  `json:"student"`
	Title    string  `json:"title"`
	Colour   string  `json:"colour"`
	WidthMM  float64 `json:"width_mm"`
	LengthMM float64 `json:"length_mm"`
}

// ClassThread is the thread of one colour for the whole class.
type ClassThread struct {
	Colour  string  `json:"colour"`
	Kind    string  `json:"kind"`
	Metres  float64 `json:"metres"`
	Bobbins int     `json:"bobbins"`
}

// ClassOrder tells how good the sequence is.
type ClassOrder struct {
	Change   float64 `json:"change_minutes"` // of all students together
	Alone    float64 `json:"alone_change_minutes"`
	Cheapest bool    `json:"cheapest"` // no sequence that all can keep takes less: proved
	Held     bool    `json:"held"`     // numbers were held already
}

package crew

// Names for "none" where an index is asked for.
const (
	None  = -1 // in [Task.Kind]: no machine; in [Place.Machine]: at none
	Any   = -1 // in [Task.Setting]: the attribute is left as it is
	Unset = -1 // in [Machine.Start]: not set to any value yet
)

// A Problem is a set of tasks to be shared out.
type Problem struct {
	Tasks    []Task
	People   []Person
	Kinds    []Kind
	Machines []Machine

	// Resources are capacities: of resource r so much may be in use at a time.
	Resources []int64

	// Handover is how long a piece is under way when the next task on it is
	// done by other people. Nobody is kept busy by it.
	Handover int64
}

// A Task is done once, from beginning to end without a break.
type Task struct {
	// Time is how long it takes at pace 100, setting up not counted.
	Time int64

	// After lists the tasks that must end before it begins. From lists those
	// whose piece it goes on with: they must end before too, and the piece
	// may have to be handed over.
	After []int
	From  []int

	// Needs are the people it takes, all for the whole time, each for one
	// need. Nil means that it goes on by itself.
	Needs []Need

	// Kind is the kind of machine, or None. Mind that the zero value is the
	// first kind.
	Kind int

	// Setting has one value for each attribute of the kind, or Any. Nil means
	// Any throughout. A machine is set up by those who do the task, just
	// before it, when all that the task waits for is there.
	Setting []int

	// Uses has the amount taken of each resource while the task is done and
	// set up for. Nil means nothing.
	Uses []int64
}

// A Need is some people with a skill.
type Need struct {
	Skill int
	Level int // the least that will do; 0 counts as 1
	Count int // 0 counts as 1
}

// A Person does one task at a time.
type Person struct {
	// Skills has the person's level in each skill, 0 for none. Missing ones
	// are 0.
	Skills []int

	// Pace is how long the person takes in hundredths of a task's time, rounded up
	// to whole units: 150 is half as long again. 0 counts as 100. Those who do
	// a task together go at the pace of the slowest; setting up takes
	// everyone the same.
	Pace int

	// Hours are when the person is there, in order and apart. A task must fit
	// into one of them. Nil means always.
	Hours []Span
}

// A Span is the time from From up to Until.
type Span struct {
	From, Until int64
}

// A Kind of machine has attributes, each set to one of its values.
type Kind struct {
	Attributes []Attribute
}

// An Attribute is one thing about a machine that tasks want set.
type Attribute struct {
	// Change[a][b] is how long it takes to go from value a to another value b.
	// Its length is the number of values. The diagonal is not read.
	Change [][]int64

	// First[b] is how long it takes to set b when nothing is set yet. Nil
	// means that the first setting takes no time.
	First []int64
}

// A Machine does one task at a time and keeps its setting in between.
type Machine struct {
	Kind  int
	Start []int // value of each attribute at the beginning, or Unset; nil is Unset throughout
}

// A Place is where a task stands in a plan.
type Place struct {
	Begin   int64 // when its people and its machine are taken
	Work    int64 // when setting up is over
	End     int64
	People  []int // in order; nil when it needs nobody
	Machine int   // or None
}

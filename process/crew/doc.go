// Package crew shares work out among people and machines. In goes a
// [Problem]: tasks with predecessors, the skills each asks for, the kind of
// machine it is done on and the setting it wants there; people with skills,
// pace and hours; machines that remember their setting; resources of which so
// much is there at a time. Out comes a [Result]: who does what when, with the
// earliest finish found and among those the fewest hand-overs, a bound that no
// plan beats, and whether the two meet. The one idea: a list of tasks, each put
// where it can begin soonest, stands for a plan; lists are bettered, clauses
// that are learned from failures prove that nothing is left to better.
//
// Start at [Solve]; [Check] walks through any plan of yours and tells its
// waits and hand-overs. Splitting equal work among a row of tables is the
// neighbour balance, waiting lines are the neighbour queue.
//
// All times are int64 in one unit of the caller's choosing, from 0. Nothing
// here knows what a task is; nothing reads a clock: time is limited by the
// context alone, work by [Options].
package crew

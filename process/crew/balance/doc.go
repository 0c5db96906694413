// Package balance splits tasks among a row of stations that the work moves
// down: the fewest stations for a cycle time, or the least cycle time for so
// many stations (assembly line balancing of the simple kind, types 1 and 2). In
// goes a [Line]: times and predecessors; out comes a [Row] with a bound. The
// one idea: what some stations in front hold is a set of tasks; all sets that
// stations can hold without more idle time than there is to spare are listed
// station by station, and where they get too many the fullest are kept, which
// costs the proof and not the answer.
//
// Start at [Fewest] and [Quickest]. Times are int64 in one unit of the
// caller's choosing.
package balance

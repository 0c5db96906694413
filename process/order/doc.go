// Package order finds the cheapest order of operations on stations that
// remember their settings. In goes a [Problem]: operations with predecessors,
// the ways in which each can be done, at which station and in which setting, and
// what moves, changes of setting, picks and unkept wishes cost; out comes a
// [Result]: a sequence with a way for each operation, its cost, a lower bound,
// and whether the sequence is proved to be cheapest. The one idea: an operation
// that is ready and costs nothing now may be done at once, so only real changes
// branch, and a bound made of exact small problems guides the search. Start at
// [Solve]; [Cost] replays and prices any sequence of yours, [Begin] says what a
// beginning leaves to be done.
//
// All costs are int64 in one unit of the caller's choosing. Nothing here knows
// what an operation is; nothing reads a clock: time is limited by the context
// alone, work by [Options].
package order

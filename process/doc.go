// Package process is the planner: from a job, a workroom and the shelf it works
// out a [Plan], one pure function an arrow.
//
//	make      make.go       pieces with true lengths (templates does the drafting)
//	choose    cloth.go      the job's cloths, her own and two layers as one
//	          choose.go     a construction for every join, edge and detail
//	          quickest.go   of equals the quicker; alike.go: few kinds in a garment
//	          reasons.go    why the others lost; otherwise.go: what would change it
//	allow     allow.go      the allowance of every edge, cut outlines
//	cut       cut.go        strips and their joins; interfacing.go what is steadied
//	          panels.go     what is wider than its cloth; onbias.go what hangs on the bias
//	operate   operate.go    passes become operations with station, setting, minutes
//	          gathers.go    edges that are drawn up before they are sewn
//	          precede.go    what must come before what, and why
//	order     arrange.go    the cheapest order (process/order does the search)
//	plan      work.go       everything as one value
//
// Beside the line stands the sharing among several people: share.go, with what
// an operation asks of a person in difficulty.go (process/crew does the search).
//
// Nothing later reaches back, and nothing here touches a file, a flag or a
// clock. Start at [Work].
package process

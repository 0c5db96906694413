// Package queue tells how long people wait at machines that they share. In
// goes a [Room]: stations with so many servers, and visitors with their walks
// through the room, each a list of stays: some time elsewhere, then a station
// and the time at it. Out comes a [Report]: waits, lines and how busy each
// station is, for one run of chance. The one idea: visitors stand in line in
// the order of their coming, ties by number, and all chance comes from a seed.
//
// Start at [Simulate]; [Repeat] does it for many seeds and tells the mean and
// the worst. Times are float64 in one unit of the caller's choosing.
package queue

package main

import _ "embed"

// The demo is planned where no job is named, in its own room where the maker
// has none. The names are those that faults in the files would carry.
var (
	//go:embed demo/job.yaml
	demoJob []byte
	//go:embed demo/workroom.yaml
	demoWorkroom []byte
)

const (
	demoJobName      = "demo/job.yaml"
	demoWorkroomName = "demo/workroom.yaml"
)

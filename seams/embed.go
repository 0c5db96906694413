package seams

import "embed"

// shelf is the knowledge that comes with bodkin.
//
//go:embed shelf/*.yaml shelf/constructions/*.yaml
var shelf embed.FS

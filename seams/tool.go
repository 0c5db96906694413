package seams

// Tool is a small thing of the bench that is not set up like a machine. Its
// name is the word that a construction's tools: ask for.
type Tool struct {
	Name    string `yaml:"tool,required"`
	Title   string `yaml:"title,required"`
	For     string `yaml:"for,required"`
	Caution string `yaml:"caution"` // name of a caution, where it can hurt
	Source  string `yaml:"source,required"`
}

package study

// ArmText is one thing that the maker states of a steering arm in words of his own.
type ArmText struct {
	Key   string // in the file, under "arm"
	Label string // on the page and in the title block
	About string // a sentence
	Group ArmGroup
	At    func(*Arm) *string
}

// ArmGroup is what a text of an arm is about: texts of one group stand in one row of the
// title block.
type ArmGroup uint8

const (
	ArmNumbers ArmGroup = iota // whose drawing it is, and of which parts
	ArmSteel
	ArmForging
)

// ArmTexts lists what a maker states in words, in the order of the title block. Which there
// are is common practice of shop drawings.
var ArmTexts = [...]ArmText{
	{"numberLeft", "Part number, left", "Part number of the left arm.", ArmNumbers, func(a *Arm) *string { return &a.NumberLeft }},
	{"numberRight", "Part number, right", "Part number of the right arm.", ArmNumbers, func(a *Arm) *string { return &a.NumberRight }},
	{"drawnBy", "Drawn by", "Who drew it, free text.", ArmNumbers, func(a *Arm) *string { return &a.DrawnBy }},
	{"checkedBy", "Checked by", "Who checked the drawing, free text.", ArmNumbers, func(a *Arm) *string { return &a.CheckedBy }},
	{"material", "Material", "Material, free text.", ArmSteel, func(a *Arm) *string { return &a.Material }},
	{"heatTreatment", "Heat treatment", "Heat treatment and hardness, free text.", ArmSteel, func(a *Arm) *string { return &a.HeatTreatment }},
	{"finish", "Finish", "Finish, free text.", ArmSteel, func(a *Arm) *string { return &a.Finish }},
	{"grain", "Grain, parting line", "Which way the grain of a forging runs, and where its parting line lies, free text.", ArmForging, func(a *Arm) *string { return &a.Grain }},
	{"draft", "Draft", "Draft angle of a forging, free text.", ArmForging, func(a *Arm) *string { return &a.Draft }},
	{"stock", "Machining stock", "What a forging leaves to be machined, free text.", ArmForging, func(a *Arm) *string { return &a.Stock }},
	{"sections", "Sections, web and boss", "Sections of the web and of the boss, free text.", ArmForging, func(a *Arm) *string { return &a.Sections }},
	{"tolerances", "Tolerances not shown", "Tolerances of what the drawing states none of, free text.", ArmForging, func(a *Arm) *string { return &a.Tolerances }},
	{"stamp", "Stamp", "What is stamped on the part and where, free text.", ArmForging, func(a *Arm) *string { return &a.Stamp }},
	{"proofLoad", "Proof load", "Load by which each part is proved, and how, free text: it is for licensed practice to set.", ArmForging, func(a *Arm) *string { return &a.ProofLoad }},
}

// armWords returns what the schema says of such a text by its place, "" of any other.
func armWords(place string) string {
	for i := range ArmTexts {
		if t := &ArmTexts[i]; place == "arm."+t.Key {
			return t.About
		}
	}
	return ""
}

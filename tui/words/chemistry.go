package words

// The key that shows the shaft's zones as chemistry.
const (
	DoChemistry    = "shaft: chemistry, or plain words"
	ShortChemistry = "chemistry"
	ShortPlain     = "plain words"

	ChemistryHead = "chemistry"
	ChemistryOff  = "the shaft shows plain words"
	NoShaftShown  = "the shaft is not shown here: go to the near view, or make the window larger"
)

// ChemistryOn says that the shaft shows chemistry, and which key takes it back.
func ChemistryOn(key string) string {
	return "the shaft shows chemistry; " + key + " shows plain words again"
}

// HelpChemistry says how the chemistry of the shaft is to be read.
const HelpChemistry = "As chemistry the shaft shows one reaction for each height. CO is how many parts in a hundred of the gas that carbon makes are carbon monoxide there; " +
	"a step of reduction needs more of it than stands behind needs, which comes from the balance of gas, oxide and iron at that heat. " +
	"Below the tuyere stands how stiff the slag is, in Pa s, and would be with more or less iron in it: with too little it does not run. Water has 0.001, honey about 10."

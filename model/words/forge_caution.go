package words

// forgeCautions are the cautions of the forge by their names. Each ends with what decides
// in its place.
var forgeCautions = map[string]string{
	"forge eyes":     "Eyes: scale and slag fly from the first blow. Safety glasses at anvil and grinder, also for who looks on.",
	"forge hot work": "Hot work: black iron burns too. Leather and wool, water and a clear way, nothing that burns within some metres; the fire ban of the day and local rules decide.",
	"forge scale":    "Scale and slag: a bloom spits liquid slag at the first blows. Boots under the trousers, nobody in line with the anvil's sides.",
	"forge flux":     "Flux: borax smokes and splashes as glass. Air that moves, gloves, and its label and local rules on handling it.",
	"forge zinc":     "Zinc: no galvanised, plated or painted iron into the fire; its white smoke makes ill. Who has breathed it and feels unwell sees a doctor.",
}

// ForgeCaution says a caution of the forge.
func ForgeCaution(id string) string { return forgeCautions[id] }

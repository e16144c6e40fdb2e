package words

// DoSettings opens the settings.
const DoSettings = "settings: units, dark or light"

// UnitIs says in which unit a quantity is read and typed.
func UnitIs(q Quantity, unit string) string { return q.String() + " in " + unit }

// SettingsUnread says why the settings are not in force.
func SettingsUnread(why string) string {
	return "the settings cannot be read: " + why + "; units are metric"
}

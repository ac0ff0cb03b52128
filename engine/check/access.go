package check

// Access is something to get at or to set going before a check: it is paid once
// and serves every check while it lasts.
type Access string

// Accesses.
const (
	SidePanel     Access = "side-panel"
	Tank          Access = "tank"           // coil, cap and spark lead lie under it
	FlywheelCover Access = "flywheel-cover" // pickup and its gap
	PlugParted    Access = "plug-parted"    // the generator's plug taken apart
	SparkPlugOut  Access = "spark-plug-out"
	Helper        Access = "helper"
	EngineOn      Access = "engine-on"
	HotRide       Access = "hot-ride"
	PeakAdapter   Access = "peak-adapter" // a diode and a capacitor on the meter's sockets
	// RegulatorParted is every plug of the regulator taken apart, that of its plus
	// wire too.
	RegulatorParted Access = "regulator-parted"
)

// Minutes is what it costs. Common practice, no source.
func (a Access) Minutes() float64 {
	switch a {
	case SidePanel:
		return 3
	case Tank:
		return 6
	case FlywheelCover:
		return 25
	case PlugParted, SparkPlugOut, PeakAdapter:
		return 1
	case Helper, EngineOn, RegulatorParted:
		return 2
	case HotRide:
		return 15
	}
	return 0
}

// Accesses lists them.
func Accesses() []Access {
	return []Access{SidePanel, Tank, FlywheelCover, PlugParted, SparkPlugOut, Helper, EngineOn, HotRide, PeakAdapter, RegulatorParted}
}

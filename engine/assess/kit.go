package assess

import "coilbook/engine/machine"

// Kit is what a session has at hand besides the meter, as a machine is predicted
// with it. An adapter without a bleeder is emptied by the meter alone.
func (b Bench) Kit() machine.Kit {
	k := b.State.Setup.Kit
	if k == nil {
		return machine.Kit{}
	}
	return machine.Kit{ResistorOhms: k.ResistorOhms, AdapterFarads: k.AdapterMicrofarads * 1e-6, BleederOhms: k.BleederMegohms * 1e6}
}

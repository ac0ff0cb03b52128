package check

// Look is a question that eyes answer with yes or no.
type Look string

// Looks.
const (
	FuseBlown        Look = "fuse-blown"
	PlugBurnt        Look = "plug-burnt"         // brown, melted or loose pins
	SparkAtPlug      Look = "spark"              // at the machine's own plug, out of the head
	SparkAtGoodPlug  Look = "spark-good-plug"    // at a plug that is known to be good, on a good cap
	SparkAtLead      Look = "spark-bare-lead"    // from the bare lead to metal
	SparkWithoutKill Look = "spark-without-kill" // with the kill wire taken off the box
	SparkWarm        Look = "spark-warm"         // right after a ride that ended in it
)

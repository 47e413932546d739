package pipe

// LoopCount returns how many closed loops a frame of threaded pipe has, each of which needs a union, a
// running thread or a slip joint, as all threads are right-handed:
//
//	loops = pipes − joints + groups
//
// Every end counts as a joint: fitting, flange, cap, union or bare end; several flanges fixed beforehand to
// one body count as one. Groups are the frames that do not touch each other. A negative count says that the
// numbers can't belong to one piece.
func LoopCount(pipes, joints, groups int) int { return pipes - joints + groups }

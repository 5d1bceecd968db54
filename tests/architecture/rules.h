// SPDX-License-Identifier: GPL-3.0-or-later
// The rules by which the house is built, as functions from a source tree to complaints. Each
// complaint names the file, the line where there is one, and the rule.
#pragma once

#include "tests/architecture/source_tree.h"

#include <string>
#include <vector>

namespace quadrille::test
{

using Complaints = std::vector<std::string>;

/// app → db → core, never back; what each layer may take from outside; tests see their own layer.
Complaints layerComplaints(const SourceTree& tree);
/// Inside core a header includes only headers above it in the order of rules.cpp.
Complaints coreOrderComplaints(const SourceTree& tree);
/// Repositories do not include one another.
Complaints repositoryComplaints(const SourceTree& tree);
/// Rooms of app: pages do not include pages, what draws and prints knows no page, nobody includes
/// the main window but its owner, the command line shows no window.
Complaints roomComplaints(const SourceTree& tree);
/// Libraries that only one file may see.
Complaints soleDoorComplaints(const SourceTree& tree);
/// No include leads back to where it came from.
Complaints cycleComplaints(const SourceTree& tree);
/// Length, licence line, includes from the top, words that mark unfinished or forbidden work.
Complaints fileComplaints(const SourceTree& tree);

} // namespace quadrille::test

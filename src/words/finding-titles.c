/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include <glib/gi18n-lib.h>

const char *
bs_words_finding_title (const BsFinding *finding)
{
  switch (finding->kind)
    {
    case BS_FINDING_TOO_FEW_LAMINATIONS:
      return _ ("Too few laminations");
    case BS_FINDING_THIN:
      return _ ("Too thin after flattening");
    case BS_FINDING_NARROW:
      return _ ("Too narrow");
    case BS_FINDING_SHORT:
      return _ ("Too short");
    case BS_FINDING_RUN_OUT:
      return _ ("Run-out against the rest");
    case BS_FINDING_DEFECT_SHOWS:
      return _ ("A defect shows");
    case BS_FINDING_HEARTS_ALIKE:
      return _ ("Heart sides look the same way");
    case BS_FINDING_MOISTURE_APART:
      return _ ("Moisture differs between neighbours");
    case BS_FINDING_MOISTURE_UNFIT:
      return _ ("Moisture does not suit the place");
    case BS_FINDING_CLAMPS_MISSING:
      return _ ("Too few clamps");
    case BS_FINDING_CLAMPS_WEAK:
      return _ ("Clamps too weak");
    case BS_FINDING_CLAMP_REACH:
      return _ ("Clamps too short");
    case BS_FINDING_CRUSHING:
      return finding->severity == BS_SEVERITY_STOP ? _ ("Clamp heads crush the wood")
                                                   : _ ("Clamp heads press the wood hard");
    case BS_FINDING_CLAMPS_PLACED:
      return _ ("More clamps placed than owned");
    case BS_FINDING_CLAMP_FORCED:
      return _ ("A clamp tightened too far");
    case BS_FINDING_OPEN_TIME:
      return finding->severity == BS_SEVERITY_STOP ? _ ("The glue sets before the clamps are tight")
                                                   : _ ("Little time left on the glue");
    case BS_FINDING_COLD:
      return _ ("Too cold for the adhesive");
    case BS_FINDING_HEAVY:
      return _ ("Heavy to lift");
    case BS_FINDING_PLANER_NARROW:
      return _ ("Wider than the planer");
    case BS_FINDING_WOOD_UNKNOWN:
      return _ ("Wood not known");
    default:
      g_return_val_if_reached ("");
    }
}

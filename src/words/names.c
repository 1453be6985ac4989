/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include <glib/gi18n-lib.h>

const char *
bs_words_severity (BsSeverity severity)
{
  switch (severity)
    {
    case BS_SEVERITY_NOTE:
      return C_ ("severity of a finding", "note");
    case BS_SEVERITY_CAUTION:
      return C_ ("severity of a finding", "caution");
    case BS_SEVERITY_STOP:
      return C_ ("severity of a finding", "stop");
    default:
      g_return_val_if_reached ("");
    }
}

const char *
bs_words_defect (BsDefectKind kind)
{
  switch (kind)
    {
    case BS_DEFECT_KNOT:
      return C_ ("defect", "knot");
    case BS_DEFECT_CHECK:
      /* Translators: a crack along the grain that came with drying. */
      return C_ ("defect", "check");
    case BS_DEFECT_WANE:
      /* Translators: an edge where the round of the log is left. */
      return C_ ("defect", "wane");
    case BS_DEFECT_STAIN:
      return C_ ("defect", "stain");
    case BS_DEFECT_BARK_POCKET:
      return C_ ("defect", "bark pocket");
    case BS_DEFECT_SAPWOOD:
      return C_ ("defect", "sapwood");
    case BS_DEFECT_PITH:
      return C_ ("defect", "pith");
    case BS_DEFECT_HOLE:
      return C_ ("defect", "hole");
    default:
      g_return_val_if_reached ("");
    }
}

const char *
bs_words_orientation (BsOrientation orientation)
{
  switch (orientation)
    {
    case BS_ORIENTATION_AS_MARKED:
      return C_ ("orientation of a lamination", "as marked");
    case BS_ORIENTATION_OVER:
      /* Translators: a half turn about the length; the top goes down. */
      return C_ ("orientation of a lamination", "turned over");
    case BS_ORIENTATION_END_FOR_END:
      /* Translators: the left end goes to the right; the top stays up. */
      return C_ ("orientation of a lamination", "end for end");
    case BS_ORIENTATION_OVER_AND_END:
      return C_ ("orientation of a lamination", "turned over and end for end");
    default:
      g_return_val_if_reached ("");
    }
}

const char *
bs_words_face (BsFace face)
{
  switch (face)
    {
    case BS_FACE_LEFT:
      return C_ ("face of a lamination", "left face");
    case BS_FACE_RIGHT:
      return C_ ("face of a lamination", "right face");
    case BS_FACE_TOP:
      return C_ ("face of a lamination", "top");
    case BS_FACE_UNDERSIDE:
      return C_ ("face of a lamination", "underside");
    default:
      g_return_val_if_reached ("");
    }
}

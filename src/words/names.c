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

const char *const bs_words_defects[] = {
  [BS_DEFECT_KNOT] = NC_ ("defect", "knot"),
  /* Translators: a crack along the grain that came with drying. */
  [BS_DEFECT_CHECK] = NC_ ("defect", "check"),
  /* Translators: an edge where the round of the log is left. */
  [BS_DEFECT_WANE] = NC_ ("defect", "wane"),
  [BS_DEFECT_STAIN] = NC_ ("defect", "stain"),
  [BS_DEFECT_BARK_POCKET] = NC_ ("defect", "bark pocket"),
  [BS_DEFECT_SAPWOOD] = NC_ ("defect", "sapwood"),
  [BS_DEFECT_PITH] = NC_ ("defect", "pith"),
  [BS_DEFECT_HOLE] = NC_ ("defect", "hole"),
  [BS_N_DEFECT_KINDS] = NULL,
};

const char *
bs_words_defect (BsDefectKind kind)
{
  g_return_val_if_fail ((guint)kind < BS_N_DEFECT_KINDS, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, BS_WORDS_DEFECT_CONTEXT, bs_words_defects[kind]);
}

/* Of a board that lies on a wide face. */
const char *const bs_words_board_faces[] = {
  [BS_FACE_LEFT] = NC_ ("face of a board", "front edge"),
  [BS_FACE_RIGHT] = NC_ ("face of a board", "back edge"),
  [BS_FACE_TOP] = NC_ ("face of a board", "top"),
  [BS_FACE_UNDERSIDE] = NC_ ("face of a board", "underside"),
  [BS_N_FACES] = NULL,
};

const char *
bs_words_board_face (BsFace face)
{
  g_return_val_if_fail ((guint)face < BS_N_FACES, "");
  return g_dpgettext2 (GETTEXT_PACKAGE, BS_WORDS_BOARD_FACE_CONTEXT, bs_words_board_faces[face]);
}

const char *
bs_words_board_end (void)
{
  return C_ ("face of a board", "left end");
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

const char *const bs_words_faces[] = {
  [BS_FACE_LEFT] = NC_ ("face of a lamination", "left face"),
  [BS_FACE_RIGHT] = NC_ ("face of a lamination", "right face"),
  [BS_FACE_TOP] = NC_ ("face of a lamination", "top"),
  [BS_FACE_UNDERSIDE] = NC_ ("face of a lamination", "underside"),
  [BS_N_FACES] = NULL,
};

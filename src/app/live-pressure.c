/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/live-pressure.h"

const BsPressure *
bs_live_pressure_get (BsSession *session)
{
  BsStudy *exact = bs_session_get_study (session, &bs_study_pressing);
  BsStudy *live = bs_session_get_study (session, &bs_study_live_pressing);

  return bs_study_get_result (bs_study_is_current (exact) ? exact : live);
}

gboolean
bs_live_pressure_is_current (BsSession *session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_pressing))
         || bs_study_is_current (bs_session_get_study (session, &bs_study_live_pressing));
}

void
bs_live_pressure_connect (BsSession *session, GCallback changed, gpointer object)
{
  const BsStudyKind *const kinds[] = { &bs_study_pressing, &bs_study_live_pressing };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_signal_connect_object (bs_session_get_study (session, kinds[i]), "changed", changed, object,
                             G_CONNECT_SWAPPED);
}

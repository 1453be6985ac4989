/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/settings.h"

GSettings *
bs_settings_get (void)
{
  static GSettings *settings = NULL;
  static gsize done = 0;

  if (g_once_init_enter (&done))
    {
      GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
      g_autoptr (GSettingsSchema) schema = NULL;

      if (source != NULL)
        schema = g_settings_schema_source_lookup (source, APPLICATION_ID, TRUE);
      if (schema != NULL)
        settings = g_settings_new_full (schema, NULL, NULL);
      else
        g_debug ("The settings schema is not installed: nothing is kept for the next time");
      g_once_init_leave (&done, 1);
    }
  return settings;
}

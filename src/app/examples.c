/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/examples.h"

#include <gio/gio.h>
#include <glib/gi18n.h>

#include "app/resources.h"
#include "plan/document.h"

typedef struct
{
  const char *file;  /* in data/examples */
  const char *title; /* N_() */
} Example;

static const Example examples[] = {
  { "bakery-counter", N_ ("Kneading counter of beech, in millimetres") },
  { "wedging-table", N_ ("Potter’s table of ash, in inches") },
  { "library-counter", N_ ("Lending counter of sixty laminations") },
  { "bread-shelf", N_ ("Bread shelf, ready to glue") },
  { "school-counter", N_ ("Serving counter, still to be cut from its boards") },
  { "hatch-counter", N_ ("Serving hatch, only wished for: what to buy") },
  { "wedging-table-begun", N_ ("A table just begun, with all that is wrong") },
};

guint
bs_examples_get_n (void)
{
  return G_N_ELEMENTS (examples);
}

const char *
bs_examples_get_title (guint index)
{
  g_return_val_if_fail (index < G_N_ELEMENTS (examples), NULL);

  return _ (examples[index].title);
}

BsPlan *
bs_examples_load (guint index)
{
  g_return_val_if_fail (index < G_N_ELEMENTS (examples), NULL);

  g_autofree char *path
      = g_strdup_printf ("%s/examples/%s.broadstave", BS_RESOURCES, examples[index].file);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  BsPlan *plan = NULL;

  if (bytes != NULL)
    plan = bs_document_parse (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error);
  if (plan == NULL) /* they are part of the program */
    g_error ("%s: %s", path, error->message);
  return plan;
}

/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/finding-item.h"

#include <glib/gi18n.h>

#include "words/boards.h"
#include "words/words.h"

struct _BsFindingItem
{
  GObject parent_instance;

  BsSeverity severity;
  char *title, *reason, *remedy;
  char *lamination; /* id, or NULL */
};

G_DEFINE_FINAL_TYPE (BsFindingItem, bs_finding_item, G_TYPE_OBJECT)

static void
bs_finding_item_finalize (GObject *object)
{
  BsFindingItem *self = BS_FINDING_ITEM (object);

  g_free (self->title);
  g_free (self->reason);
  g_free (self->remedy);
  g_free (self->lamination);
  G_OBJECT_CLASS (bs_finding_item_parent_class)->finalize (object);
}

static void
bs_finding_item_class_init (BsFindingItemClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_finding_item_finalize;
}

static void
bs_finding_item_init (BsFindingItem *self)
{
}

/* "Defect shows: B, place 4" */
static char *
write_title (const BsFinding *finding, const BsLamination *lamination)
{
  const char *title = bs_words_finding_title (finding);

  if (lamination == NULL)
    return g_strdup (title);
  /* Translators: what was found, the lamination's label and its place in the slab. */
  return g_strdup_printf (_ ("%s: %s, place %d"), title,
                          lamination->label != NULL ? lamination->label : lamination->id,
                          finding->place + 1);
}

BsFindingItem *
bs_finding_item_new (const BsResults *results, guint index)
{
  g_return_val_if_fail (results != NULL, NULL);
  g_return_val_if_fail (index < results->findings->len, NULL);

  const BsFinding *finding = &g_array_index (results->findings, BsFinding, index);
  const BsLamination *lamination
      = finding->place >= 0 ? results->stack->placed[finding->place].lamination : NULL;
  BsFindingItem *self = g_object_new (BS_TYPE_FINDING_ITEM, NULL);
  self->severity = finding->severity;
  self->title = write_title (finding, lamination);
  self->reason = bs_words_finding_reason (finding, results);
  self->remedy = bs_words_finding_remedy (finding, results);
  self->lamination = lamination != NULL ? g_strdup (lamination->id) : NULL;
  return self;
}

BsFindingItem *
bs_finding_item_new_photo (const BsBoard *board, const char *reason)
{
  g_return_val_if_fail (board != NULL && reason != NULL, NULL);

  BsFindingItem *self = g_object_new (BS_TYPE_FINDING_ITEM, NULL);
  self->severity = BS_SEVERITY_NOTE;
  self->title = bs_words_photo_title (board);
  self->reason = g_strdup (reason);
  self->remedy = g_strdup (bs_words_photo_remedy ());
  return self;
}

BsSeverity
bs_finding_item_get_severity (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), BS_SEVERITY_NOTE);

  return self->severity;
}

const char *
bs_finding_item_get_title (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return self->title;
}

const char *
bs_finding_item_get_reason (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return self->reason;
}

const char *
bs_finding_item_get_remedy (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return self->remedy;
}

const char *
bs_finding_item_get_lamination (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return self->lamination;
}

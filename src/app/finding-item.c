/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/finding-item.h"

struct _BsFindingItem
{
  GObject parent_instance;

  BsResults *results;
  guint index;
};

G_DEFINE_FINAL_TYPE (BsFindingItem, bs_finding_item, G_TYPE_OBJECT)

static void
bs_finding_item_finalize (GObject *object)
{
  g_clear_pointer (&BS_FINDING_ITEM (object)->results, bs_results_unref);
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

BsFindingItem *
bs_finding_item_new (BsResults *results, guint index)
{
  g_return_val_if_fail (results != NULL, NULL);
  g_return_val_if_fail (index < results->findings->len, NULL);

  BsFindingItem *self = g_object_new (BS_TYPE_FINDING_ITEM, NULL);
  self->results = bs_results_ref (results);
  self->index = index;
  return self;
}

const BsFinding *
bs_finding_item_get_finding (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return &g_array_index (self->results->findings, BsFinding, self->index);
}

const BsResults *
bs_finding_item_get_results (BsFindingItem *self)
{
  g_return_val_if_fail (BS_IS_FINDING_ITEM (self), NULL);

  return self->results;
}

const BsLamination *
bs_finding_item_get_lamination (BsFindingItem *self)
{
  const BsFinding *finding = bs_finding_item_get_finding (self);

  return finding->place >= 0 ? self->results->stack->placed[finding->place].lamination : NULL;
}

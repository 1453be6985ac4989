/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-item.h"

struct _BsWoodItem
{
  GObject parent_instance;

  BsWood *wood;
  BsWoodCard card; /* of that wood */
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsWoodItem, bs_wood_item, G_TYPE_OBJECT)

static void
bs_wood_item_finalize (GObject *object)
{
  g_clear_pointer (&BS_WOOD_ITEM (object)->wood, bs_wood_unref);
  G_OBJECT_CLASS (bs_wood_item_parent_class)->finalize (object);
}

static void
bs_wood_item_class_init (BsWoodItemClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_wood_item_finalize;
  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_WOOD_ITEM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_wood_item_init (BsWoodItem *self)
{
}

BsWoodItem *
bs_wood_item_new (const BsWoodCard *card)
{
  BsWoodItem *self = g_object_new (BS_TYPE_WOOD_ITEM, NULL);

  bs_wood_item_set_card (self, card);
  return self;
}

void
bs_wood_item_set_card (BsWoodItem *self, const BsWoodCard *card)
{
  g_return_if_fail (BS_IS_WOOD_ITEM (self));

  BsWood *wood = bs_wood_ref ((BsWood *)card->wood);
  g_clear_pointer (&self->wood, bs_wood_unref);
  self->wood = wood;
  self->card = *card;
  g_signal_emit (self, signals[CHANGED], 0);
}

const BsWoodCard *
bs_wood_item_get_card (BsWoodItem *self)
{
  g_return_val_if_fail (BS_IS_WOOD_ITEM (self), NULL);

  return &self->card;
}

const char *
bs_wood_item_get_id (BsWoodItem *self)
{
  g_return_val_if_fail (BS_IS_WOOD_ITEM (self), NULL);

  return self->wood->id;
}

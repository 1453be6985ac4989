/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-piece.h"

struct _BsCuttingPiece
{
  GtkWidget parent_instance;

  char *id;
};

G_DEFINE_FINAL_TYPE (BsCuttingPiece, bs_cutting_piece, GTK_TYPE_WIDGET)

static void
bs_cutting_piece_finalize (GObject *object)
{
  g_free (BS_CUTTING_PIECE (object)->id);
  G_OBJECT_CLASS (bs_cutting_piece_parent_class)->finalize (object);
}

static void
bs_cutting_piece_class_init (BsCuttingPieceClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->finalize = bs_cutting_piece_finalize;
  gtk_widget_class_set_css_name (widget_class, "piece");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
bs_cutting_piece_init (BsCuttingPiece *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
bs_cutting_piece_new (const char *id)
{
  BsCuttingPiece *self = g_object_new (BS_TYPE_CUTTING_PIECE, NULL);

  self->id = g_strdup (id);
  return GTK_WIDGET (self);
}

const char *
bs_cutting_piece_get_id (BsCuttingPiece *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_PIECE (self), NULL);

  return self->id;
}

void
bs_cutting_piece_describe (BsCuttingPiece *self, const char *text, gboolean is_selected)
{
  g_return_if_fail (BS_IS_CUTTING_PIECE (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_SELECTED, is_selected,
                               -1);
}

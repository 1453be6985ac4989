/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/finding-row.h"

#include "app/resources.h"
#include "app/severity-sign.h"
#include "words/words.h"

struct _BsFindingRow
{
  GtkWidget parent_instance;

  /* template */
  BsSeveritySign *sign;
  GtkLabel *severity;
  GtkLabel *title;
  GtkLabel *reason;
  GtkLabel *remedy;
};

G_DEFINE_FINAL_TYPE (BsFindingRow, bs_finding_row, GTK_TYPE_WIDGET)

static void
bs_finding_row_dispose (GObject *object)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL;)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_finding_row_parent_class)->dispose (object);
}

static void
bs_finding_row_class_init (BsFindingRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_finding_row_dispose;

  g_type_ensure (BS_TYPE_SEVERITY_SIGN);
  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/finding-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, reason);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, remedy);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, severity);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, sign);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, title);

  gtk_widget_class_set_css_name (widget_class, "findingrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bs_finding_row_init (BsFindingRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
bs_finding_row_new (void)
{
  return g_object_new (BS_TYPE_FINDING_ROW, NULL);
}

void
bs_finding_row_show (BsFindingRow *self, BsFindingItem *item)
{
  g_return_if_fail (BS_IS_FINDING_ROW (self));
  g_return_if_fail (BS_IS_FINDING_ITEM (item));

  const char *severity = bs_words_severity (bs_finding_item_get_severity (item));
  const char *title = bs_finding_item_get_title (item);
  const char *reason = bs_finding_item_get_reason (item);
  g_autofree char *label = g_strdup_printf ("%s. %s. %s", severity, title, reason);

  bs_severity_sign_show (self->sign, bs_finding_item_get_severity (item));
  gtk_label_set_text (self->severity, severity);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->reason, reason);
  gtk_label_set_text (self->remedy, bs_finding_item_get_remedy (item));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
bs_finding_row_set_open (BsFindingRow *self, gboolean is_open)
{
  g_return_if_fail (BS_IS_FINDING_ROW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->remedy), is_open);
}

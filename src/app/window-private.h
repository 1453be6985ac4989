/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/findings-list.h"
#include "app/readout.h"
#include "app/window.h"

/* Of the name of a plan's file. */
#define BS_PLAN_ENDING ".broadstave"

G_BEGIN_DECLS

struct _BsWindow
{
  GtkApplicationWindow parent_instance;

  /* owned */
  BsSession *session;
  GFile *file; /* where the plan is saved, or NULL */
  GtkPageSetup *page_setup;
  GtkPrintSettings *print_settings;
  GtkFileChooserNative *chooser; /* while it is open */
  GMenu *edit_menu;              /* undo and redo, with what they would do */
  GMenu *recent_menu;
  /* state */
  gboolean is_closing; /* the question about changes was answered */
  gboolean with_workings;
  guint furnish_source; /* the contents are about to be shown */
  /* template */
  GtkWidget *contents;
  GtkButton *undo;
  GtkButton *redo;
  GtkLabel *undo_label;
  GtkLabel *redo_label;
  GtkMenuButton *menu;
  BsFindingsList *findings;
  GtkStack *places;
  GtkWidget *sidebar; /* the list of places */
  BsReadout *readout;
};

/* window.c */
void bs_window_update_title (BsWindow *self);

/* window-actions.c */
void bs_window_actions_class_init (GtkWidgetClass *class);
void bs_window_actions_init (BsWindow *self);
void bs_window_update_actions (BsWindow *self);

/* window-file.c */
void bs_window_file_class_init (GtkWidgetClass *class);
void bs_window_load_recent (BsWindow *self);    /* fills recent_menu, and keeps it filled */
char *bs_window_get_file_name (BsWindow *self); /* without its folder; NULL when there is none */
/* The result is TRUE when the changes are saved or given up, FALSE when the person goes back. */
void bs_window_guard_async (BsWindow *self, GAsyncReadyCallback callback, gpointer user_data);
gboolean bs_window_guard_finish (BsWindow *self, GAsyncResult *result);

/* window-places.c */
void bs_window_places_class_init (GtkWidgetClass *class);
void bs_window_places_init (BsWindow *self);
/* Shows the place of that name and puts the focus there. */
void bs_window_go_to (BsWindow *self, const char *place);

/* window-print.c */
void bs_window_print_class_init (GtkWidgetClass *class);
void bs_window_print_init (BsWindow *self);
/* The chooser's extension decides the kind of file. */
gboolean bs_window_export (BsWindow *self, const char *filename, GError **error);

G_END_DECLS

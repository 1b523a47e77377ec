package org.boothlamp.page;

import org.boothlamp.report.Markup;
import org.boothlamp.report.RunRecord;

/**
 * Something more on a run's page: a form, a link, a picture. Called from several threads. A form
 * goes to a view of its own, such as /bead/17, which sends the browser back to /runs/17.
 */
public interface RunPart {

  /**
   * Writes it.
   *
   * @param page in the main part, between two sections
   * @param run whose page it is; it may still be running
   * @param request who asks, with the rights that decide what is shown
   */
  void append(Markup page, RunRecord run, Request request);
}

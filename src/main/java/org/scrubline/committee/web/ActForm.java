package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;

/**
 * One form for everything signed after a decision.
 *
 * @param persons whom to choose from; empty when nobody is chosen
 * @param grounds reasons to choose from; empty when none is
 * @param accepted whether the signer accepted what a signature means
 */
record ActForm(
        String title,
        String about,
        String lede,
        String action,
        String back,
        List<Option> persons,
        List<String> chosen,
        List<Option> grounds,
        boolean reasonNeeded,
        String meaning,
        String submit,
        boolean accepted,
        @Nullable String quote,
        FormView form) {}

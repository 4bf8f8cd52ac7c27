package org.scrubline.scoring.curve;

/** What the rows of one assessment share. */
record AssessmentHead(String id, String trainee, String supervisor, CaseContext context) {}

-- CreateTable
CREATE TABLE "SiteEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "logId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "SiteEvent_logId_fkey" FOREIGN KEY ("logId") REFERENCES "Document" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "SiteEvent_logId_number_key" ON "SiteEvent"("logId", "number");

-- What was seen is never rewritten: a correction is an event of its own.
CREATE TRIGGER "SiteEvent_is_never_changed" BEFORE UPDATE ON "SiteEvent"
BEGIN
    SELECT RAISE(ABORT, 'an event is never changed');
END;

CREATE TRIGGER "SiteEvent_is_never_removed" BEFORE DELETE ON "SiteEvent"
BEGIN
    SELECT RAISE(ABORT, 'an event is never removed');
END;

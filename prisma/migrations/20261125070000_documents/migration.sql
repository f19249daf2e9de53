-- CreateTable
CREATE TABLE "Document" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "districtId" TEXT,
    "name" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL DEFAULT 0,
    "body" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "deletedAt" DATETIME,
    CONSTRAINT "Document_districtId_fkey" FOREIGN KEY ("districtId") REFERENCES "Document" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Edit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "docId" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "inverse" TEXT NOT NULL,
    "touches" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "Edit_docId_fkey" FOREIGN KEY ("docId") REFERENCES "Document" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Blob" (
    "hash" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "bytes" BLOB NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "value" TEXT NOT NULL
);

-- CreateIndex
CREATE INDEX "Document_kind_deletedAt_name_idx" ON "Document"("kind", "deletedAt", "name");

-- CreateIndex
CREATE INDEX "Document_districtId_idx" ON "Document"("districtId");

-- CreateIndex
CREATE UNIQUE INDEX "Edit_docId_sequence_key" ON "Edit"("docId", "sequence");

-- Edits are append-only: what was done is never rewritten.
CREATE TRIGGER "Edit_is_never_changed" BEFORE UPDATE ON "Edit"
BEGIN
    SELECT RAISE(ABORT, 'an edit is never changed');
END;

CREATE TRIGGER "Edit_is_never_removed" BEFORE DELETE ON "Edit"
BEGIN
    SELECT RAISE(ABORT, 'an edit is never removed');
END;

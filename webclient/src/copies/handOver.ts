// Gives a file to the person: by the system's share sheet where a phone has one, else as a download.

/** False when the person closed the share sheet. */
export async function handOver(name: string, pieces: string[], type = "application/json"): Promise<boolean> {
  const file = new File(pieces, name, { type });
  if (sharesFiles(file)) return navigator.share({ files: [file] }).then(() => true, (error: Error) => error.name !== "AbortError" && download(file));
  return download(file);
}

/** On a desk a download is what people expect. */
function sharesFiles(file: File): boolean {
  return matchMedia("(pointer: coarse)").matches && (navigator.canShare?.({ files: [file] }) ?? false);
}

function download(file: File): true {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return true;
}

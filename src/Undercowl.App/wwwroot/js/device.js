// What only the browser can do: files, sharing, theme, printing.
export function theme(name) {
  document.documentElement.dataset.theme = name;
  try {
    localStorage.setItem('theme', name);
  } catch {
    // Without storage the theme holds until the page is left.
  }
}

export function themeKept() {
  return document.documentElement.dataset.theme || 'system';
}

export function draft(key) {
  return localStorage.getItem(`draft ${key}`) ?? '';
}

export function keepDraft(key, text) {
  if (text) {
    localStorage.setItem(`draft ${key}`, text);
  } else {
    localStorage.removeItem(`draft ${key}`);
  }
}

export function save(name, type, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

export function canShare() {
  return !!navigator.canShare?.({ files: [new File(['x'], 'x.txt', { type: 'text/plain' })] });
}

export async function share(name, text) {
  try {
    // Share sheets take few types of file; plain text passes everywhere.
    await navigator.share({ files: [new File([text], name, { type: 'text/plain' })], title: name });
    return true;
  } catch {
    return false;
  }
}

export function choose(accept) {
  return new Promise(resolve => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.multiple = true;
    input.oncancel = () => resolve('');
    input.onchange = async () => resolve((await Promise.all([...input.files].map(f => f.text()))).join('\n'));
    input.click();
  });
}

export function print() {
  window.print();
}

export function deviceName() {
  return [...crypto.getRandomValues(new Uint8Array(4))].map(b => b.toString(16).padStart(2, '0')).join('');
}
